import type { PaperWish } from '../session/session';
import { useDesk } from './desk';
import { desk } from './paths';

/** Leads to the sheet of paper, where it can be looked at before it is printed. */
export const PrintButton = ({ paper, words, primary = false }: { readonly paper: PaperWish['what']; readonly words: string; readonly primary?: boolean }) => {
  const { id } = useDesk();
  return (
    <a className={primary ? 'button primary' : 'button'} href={desk.print(id, paper)}>
      {words}
    </a>
  );
};

export const PrintButton = ({ words, primary = false }: { readonly paper: string; readonly words: string; readonly primary?: boolean }) => (
  <button type="button" className={primary ? 'button primary' : 'button'}>
    {words}
  </button>
);

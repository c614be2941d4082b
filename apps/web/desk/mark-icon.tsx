import type { Mark } from '../../../src/terms';
import { MarkSign } from '../shared/mark-sign';

/** A mark in a list or at a title. Its word stands near it, so the picture itself is silent. */
export const MarkIcon = ({ mark, professional = false, size = 20 }: { readonly mark: Mark; readonly professional?: boolean; readonly size?: 16 | 20 | 28 }) => (
  <span className={`mark-icon of-${size}`}>
    <MarkSign mark={mark} who={professional ? 'professional' : 'yourself'} />
  </span>
);

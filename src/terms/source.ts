/** Where a number or a sentence comes from, and how far it was read. */
export type Source = {
  /** `seen`: read in the source. `practice`: common practice, no published source. `memory`: from memory, unconfirmed. `own`: proposed by this project. */
  readonly status: 'seen' | 'practice' | 'memory' | 'own';
  /** Author, title, edition or year, table, equation or page; for `practice` and `own` a plain sentence. */
  readonly text: string;
  readonly address?: string;
};

export const COMMON_PRACTICE: Source = { status: 'practice', text: 'common practice, no published source' };

export const seen = (text: string, address?: string): Source => (address === undefined ? { status: 'seen', text } : { status: 'seen', text, address });
export const memory = (text: string): Source => ({ status: 'memory', text: `${text}; from memory, unconfirmed` });
export const ours = (text: string): Source => ({ status: 'own', text });

/** What the outside world does not let us do, for people: what happened, what is safe, what to do. */
export type Trouble = {
  readonly code: 'no-room' | 'not-allowed' | 'lost' | 'held-by-older' | 'unreadable' | 'refused' | 'other';
  readonly happened: string;
  readonly safe: string;
  readonly todo: string;
};

type Troubled = Error & { readonly trouble: Trouble };

/** An error that carries its own words. */
export const withTrouble = (trouble: Trouble, cause?: unknown): Troubled => Object.assign(new Error(`${trouble.happened} ${trouble.safe} ${trouble.todo}`, { cause }), { trouble });

const isTroubled = (error: unknown): error is Troubled => error instanceof Error && 'trouble' in error;

/** The words of an error, when it has them. */
export const troubleOf = (error: unknown): Trouble | undefined => (isTroubled(error) ? error.trouble : undefined);

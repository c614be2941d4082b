/** A figure stays with its unit when a line breaks. */
export const unbroken = (text: string): string =>
  text.replace(/(\d) (?=(?:%|ft|in|m|cm|mm|min|minutes|points?|bit)(?![a-z]))/g, '$1\u00a0').replace(/ft (?=\d+\sin\b)/g, 'ft\u00a0');

/** Line and paragraph separators of Unicode, and bare carriage returns, are line ends. */
const LINE_ENDS = /\r\n?|\u0085|\u2028|\u2029/g;
/** Controls but tab and line feed, lone surrogates, the byte order mark, and marks that turn the reading direction. */
const UNWANTED = /(?![\t\n])\p{Cc}|\p{Surrogate}|[\u{feff}\u{61c}\u{200e}\u{200f}\u{202a}-\u{202e}\u{2066}-\u{2069}]/gu;

/** A text without what calendars forbid, what could steer a terminal, and what could deceive a reader. */
export const cleaned = (text: string): string => text.replace(LINE_ENDS, '\n').replace(UNWANTED, '');

/**
 * A text that a person typed, on one line and without the characters that XML and DXF cannot hold: control
 * characters, halves of surrogate pairs, and the two codes that are no characters (XML 1.0, production 2).
 */
export const plainText = (text: string): string => text.replace(/[\p{Cc}\p{Cs}\uFFFE\uFFFF]+/gu, ' ');

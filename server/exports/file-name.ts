/** Longest part of a file's name that a title gives; whole names stay far below the 255 of common file systems. */
const LONGEST = 60;

/** Letters, digits and joining strokes of a text; everything else that a file's name or a header could trip over goes. */
const part = (text: string): string =>
  [...text.normalize('NFC').toLowerCase()]
    .join('')
    .replace(/[^\p{L}\p{M}\p{N}]+/gu, '-')
    .slice(0, LONGEST)
    .replace(/^-+|-+$|[\p{Cs}]/gu, '');

/** The same in ASCII: accents are dropped, letters without an ASCII base go. */
const ascii = (text: string): string =>
  text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/[^a-z0-9.-]+/g, '-')
    .replace(/-{2,}/g, '-')
    .replace(/^-+/, '');

/** RFC 8187, attr-char: what encodeURIComponent leaves and a header's value cannot hold. */
const escaped = (text: string): string =>
  encodeURIComponent(text).replace(/['()*]/g, (sign) => `%${sign.charCodeAt(0).toString(16).toUpperCase()}`);

/** A file named after its job, its member and what it is (RFC 6266): plain, and with every letter where it differs. */
function named(how: 'attachment' | 'inline', name: string, texts: readonly string[]): string {
  const whole = [...texts.map(part).filter((text) => text !== ''), name].join('-');
  const plain = ascii(whole);
  return `${how}; filename="${plain}"${plain === whole ? '' : `; filename*=UTF-8''${escaped(whole)}`}`;
}

/** A file to be kept. */
export const attachment = (name: string, texts: readonly string[]): string => named('attachment', name, texts);

/** A file to be looked at, and named so where it is kept. */
export const inline = (name: string, texts: readonly string[]): string => named('inline', name, texts);

/** What a file of a quote that went out is: 'quote-2.csv', 'quote-2-working.pdf'. */
export const issuedName = (name: string, { number }: { readonly number: number }): string =>
  name.replace(/^quote/, `quote-${String(number)}`);

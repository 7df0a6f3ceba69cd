/** Signs outside ASCII as ISO 10303-21 writes them in a string: \X2\ with four digits each, \X4\ with eight. */
const encoded = (text: string): string =>
  text.replace(/[^\p{ASCII}]/gu, (sign) => {
    const code = sign.codePointAt(0) ?? 0;
    const [page, digits] = code > 0xffff ? ['X4', 8] : ['X2', 4];
    return `\\${String(page)}\\${code.toString(16).toUpperCase().padStart(Number(digits), '0')}\\X0\\`;
  });

/** A text as the inside of a string of ISO 10303-21. */
const quotedText = (text: string): string => encoded(text.replaceAll('\\', '\\\\').replaceAll("'", "''"));

/** The kernel's file with the job's title as its name and every sign as the standard writes it. */
export const stepText = (written: string, title: string): string =>
  encoded(written).replace(/FILE_NAME\('[^']*'/, () => `FILE_NAME('${quotedText(title)}'`);

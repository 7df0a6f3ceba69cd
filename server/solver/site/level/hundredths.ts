/** As a good level reads [degrees]: in words nobody wants more. */
export const hundredths = (angle: number): number => Math.round(angle * 100) / 100 || 0; // never −0

/** 2/√π, the slope of erf at 0. */
const SLOPE = 2 / Math.sqrt(Math.PI);
/** Series below, continued fraction above: both hold full double accuracy here. */
const CHANGE = 2;

/** Complementary error function. Series of erf (DLMF 7.6.2) below 2, continued fraction (DLMF 7.9.1) from there on. */
export function erfc(x: number): number {
  if (x < 0) return 2 - erfc(-x);
  if (x < CHANGE) {
    let term = x;
    let sum = x;
    for (let n = 1; Math.abs(term) > 1e-18 * sum; n += 1) {
      term *= (2 * x * x) / (2 * n + 1);
      sum += term;
    }
    return 1 - SLOPE * Math.exp(-x * x) * sum;
  }
  let tail = x;
  for (let n = 120; n >= 1; n -= 1) tail = x + n / 2 / tail;
  return Math.exp(-x * x) / (Math.sqrt(Math.PI) * tail);
}

/** Below this Newton's method starts out in the tail: from 0 it would step past all digits. */
const TAIL = 0.01;

/**
 * Inverse of erfc by Newton's method on ln erfc, which converges far out in the tail as well.
 *
 * @param y between 0 and 2, both left out
 */
export function erfcinv(y: number): number {
  if (y === 1) return 0;
  if (y > 1) return -erfcinv(2 - y);
  // erfc x is a little less than exp(−x²) there
  let x = y < TAIL ? Math.sqrt(-Math.log(y)) : 0;
  for (let round = 0; round < 100; round += 1) {
    const value = erfc(x);
    const step = (Math.log(value / y) * value) / (-SLOPE * Math.exp(-x * x));
    x -= step;
    if (Math.abs(step) < 1e-14 * Math.max(1, Math.abs(x))) break;
  }
  return x;
}

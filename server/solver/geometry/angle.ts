/** Degrees in one radian: a Job and a Plan have degrees, the solver radians. */
export const DEGREES = 180 / Math.PI;

/** Radians in one degree. */
export const RADIANS = Math.PI / 180;

/** An angle of any size as −π … π [rad]. */
export const withinHalfTurn = (angle: number): number => angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI));

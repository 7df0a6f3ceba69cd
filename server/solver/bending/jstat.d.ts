/** The part of jstat that is used here; the package brings no types of its own. */
declare module 'jstat' {
  const jstat: {
    readonly jStat: {
      /** Quantile of Student's t distribution for a probability and degrees of freedom. */
      readonly studentt: { inv(probability: number, degreesOfFreedom: number): number };
    };
  };
  export default jstat;
}

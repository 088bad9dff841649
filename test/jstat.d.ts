/** The parts of jstat that the tests use as a second route; the package brings no types of its own. */
declare module 'jstat' {
  interface TwoParameters {
    cdf(x: number, a: number, b: number): number
    inv(q: number, a: number, b: number): number
    pdf(x: number, a: number, b: number): number
  }
  interface OneParameter {
    cdf(x: number, dof: number): number
    inv(q: number, dof: number): number
    pdf(x: number, dof: number): number
  }
  export const jStat: {
    readonly beta: TwoParameters
    readonly normal: TwoParameters
    readonly lognormal: TwoParameters
    readonly studentt: OneParameter
    gammaln(x: number): number
  }
  const all: { readonly jStat: typeof jStat }
  export default all
}

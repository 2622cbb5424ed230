/** The part of UCUM's reference library that the tests use; it brings no types of its own. */
declare module '@lhncbc/ucum-lhc' {
  type Library = {
    validateUnitString(code: string): { status: 'valid' | 'invalid' | 'error'; ucumCode: string | null };
    convertUnitTo(
      from: string,
      value: number,
      to: string,
    ): { status: 'succeeded' | 'failed' | 'error'; toVal: number | null };
  };
  const ucum: { UcumLhcUtils: { getInstance(): Library } };
  export default ucum;
}

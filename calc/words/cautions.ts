/** Stands wherever a result is read. Planning figures can hurt people who take them for more. */
export const CAUTIONS =
  'For planning by qualified persons. Verify against the adopted code and with the authority having jurisdiction; ' +
  'stamped by a licensed engineer where required; structure checked by others; de-energise and lock out before work; ' +
  'equipment instructions govern. Nothing here is a statement of compliance.';

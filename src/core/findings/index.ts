export { allFindings, type Evidence, worstFirst } from './allFindings.ts';
export type { Finding, Severity } from './finding.ts';
export { rideFindings } from './rideRules.ts';
export { strengthFindings } from './strengthRules.ts';

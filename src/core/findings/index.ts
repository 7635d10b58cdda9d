export { allFindings, type Evidence } from './allFindings.ts';
export type { Finding, Severity } from './finding.ts';

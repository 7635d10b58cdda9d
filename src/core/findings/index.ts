export type { Finding, Severity } from './finding.ts';

import type { Bike, MassSummary, StackFlaw } from '../bike/index.ts';
import type { Build } from '../build/index.ts';
import type { DrivelineSolution } from '../driveline/index.ts';
import type { Clearance } from '../fit/index.ts';
import type { PlateFlaw } from '../plates/index.ts';
import { brakeFindings } from './brakeRules.ts';
import { clearanceFindings } from './clearanceRules.ts';
import { driveFindings } from './driveRules.ts';
import type { Finding, Severity } from './finding.ts';
import { ladderFindings } from './ladderRules.ts';
import { plateFindings } from './plateRules.ts';
import { riderFindings } from './riderRules.ts';
import { stackFindings } from './stackRules.ts';
import { steeringFindings } from './steeringRules.ts';
import { tubeFindings } from './tubeRules.ts';

/** Everything that a verdict is made from. */
export interface Evidence {
  readonly build: Build;
  readonly bike: Bike;
  readonly driveline: DrivelineSolution;
  readonly masses: MassSummary;
  readonly clearances: readonly Clearance[];
  readonly stackFlaws: readonly StackFlaw[];
  readonly plateFlaws: readonly PlateFlaw[];
}

const RANK: Readonly<Record<Severity, number>> = { stop: 0, caution: 1, note: 2 };

/** All findings, what stops the work first; within a severity in the order of the build. */
export function allFindings(evidence: Evidence): readonly Finding[] {
  const { build, bike, driveline } = evidence;
  const findings = [
    ...stackFindings(evidence.stackFlaws),
    ...ladderFindings(bike),
    ...driveFindings(build, driveline),
    ...clearanceFindings(evidence.clearances),
    ...steeringFindings(build, bike),
    ...brakeFindings(build),
    ...riderFindings(build, bike, evidence.masses),
    ...tubeFindings(build, bike),
    ...plateFindings(evidence.plateFlaws),
  ];
  return worstFirst(findings);
}

/** What stops the work first, then cautions, then notes; each in the order given. */
export function worstFirst(findings: readonly Finding[]): readonly Finding[] {
  return findings.toSorted((a, b) => RANK[a.severity] - RANK[b.severity]);
}

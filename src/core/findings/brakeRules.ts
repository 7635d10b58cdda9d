import type { Build, DiscBrakeEntry } from '../build/index.ts';
import { practice } from '../quantity/index.ts';
import type { Finding } from './finding.ts';

/** Total caliper piston area to master area: firm feel between these. */
const AREA_RATIO = { wooden: 20, light: 30 };

/** Two independent brakes, bands that wrap the right way, arms that cannot let go, and a lever that is not wooden. */
export function brakeFindings(build: Build): readonly Finding[] {
  return [
    ...countFindings(build),
    ...(['front', 'rear'] as const).flatMap((wheel) => oneBrake(build, wheel)),
  ];
}

function countFindings(build: Build): Finding[] {
  const missing = (['front', 'rear'] as const).filter((wheel) => build.brakes[wheel] === undefined);
  if (missing.length === 0) return [];
  return [
    {
      id: 'brakes.two',
      severity: 'stop',
      question: 'ride',
      part: 'brakes',
      path: 'brakes',
      what: `There is no ${missing.join(' and no ')} brake: ${2 - missing.length} of two independent brakes.`,
      value: 2 - missing.length,
      limit: 2,
      margin: -missing.length,
      kind: 'count',
      why: 'One brake that fails leaves none; most road laws ask for two.',
      remedy: 'Add a brake on the other wheel. Fit and try the brakes before the first start of the engine.',
      source: practice('two independent brakes'),
    },
  ];
}

function oneBrake(build: Build, wheel: 'front' | 'rear'): Finding[] {
  const brake = build.brakes[wheel];
  if (!brake) return [];
  const base = { question: 'ride' as const, part: `${wheel} brake`, path: `brakes.${wheel}` };
  if (brake.kind === 'disc') return discFindings(brake, wheel, base);
  const findings: Finding[] = [];
  if (brake.kind === 'band' && brake.selfWraps !== true) {
    findings.push({
      ...base,
      id: `brakes.band-direction:${wheel}`,
      severity: 'caution',
      what: `The ${wheel} band brake is not said to wrap itself on: its open end must lie where forward rotation winds it tighter.`,
      why: 'Fitted the wrong way round, a band has a fraction of its power.',
      remedy: 'Turn the anchor and the pull round, then say `selfWraps`.',
      source: practice('external band, open end toward rotation'),
    });
  }
  if (brake.reactionArm !== true) {
    findings.push({
      ...base,
      id: `brakes.reaction-arm:${wheel}`,
      severity: 'stop',
      what: `The ${wheel} brake has no bolted reaction arm.`,
      why: 'A brake that lets go winds the cable round the axle and locks the wheel.',
      remedy: 'A bolted arm to the frame with a second fixing.',
      source: practice('bolted reaction arm, second fixing'),
    });
  }
  return findings;
}

function discFindings(
  brake: DiscBrakeEntry,
  wheel: 'front' | 'rear',
  base: { readonly question: 'ride'; readonly part: string; readonly path: string },
): Finding[] {
  const { pistonDiameter, pistons, style } = brake.caliper;
  if (pistonDiameter === undefined || pistons === undefined || brake.masterBore === undefined) return [];
  // A sliding caliper's pistons press both pads, so they count twice to compare with the rule for opposed ones.
  const both = style === 'sliding' ? 2 : 1;
  const ratio = (pistons * both * pistonDiameter ** 2) / brake.masterBore ** 2;
  const leverTimes = brake.leverRatio ?? 1;
  const findings: Finding[] = [];
  if (ratio > AREA_RATIO.light || (ratio < AREA_RATIO.wooden && leverTimes * ratio < 60)) {
    const wooden = ratio < AREA_RATIO.wooden;
    findings.push({
      ...base,
      id: `brakes.area-ratio:${wheel}`,
      severity: 'caution',
      what: `Caliper to master area is ${ratio.toFixed(1)} to 1 on the ${wheel} brake.`,
      value: ratio,
      limit: wooden ? AREA_RATIO.wooden : AREA_RATIO.light,
      margin: wooden ? ratio - AREA_RATIO.wooden : AREA_RATIO.light - ratio,
      kind: 'ratio',
      why: wooden
        ? 'Under 20 to 1 the lever is wooden and the wheel locks late and hard.'
        : 'Far over 27 to 1 the lever runs out of travel.',
      remedy: wooden ? 'A smaller master bore or larger pistons.' : 'A larger master bore.',
      source: practice('total caliper piston area to master area 23 to 27 to 1'),
    });
  }
  return findings;
}

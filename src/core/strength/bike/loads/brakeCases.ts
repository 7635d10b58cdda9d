import { derived } from '../../../quantity/index.ts';
import type { CasesInput, Draft } from './caseTypes.ts';
import type { Holds } from './riderHolds.ts';
import { onWheel } from './tireLoads.ts';
import type { Whole } from './wholeBike.ts';

/** Each brake alone until the tire lets go or the other wheel lifts. */
export function brakeCases({ build, settings }: CasesInput, whole: Whole, holds: Holds): Draft[] {
  const mu = settings.brakingGrip;
  const { weight, wheelbase: p, ahead: b, height: h } = whole;
  const lift = (p - b) / h;
  const share = p > mu * h ? (mu * b) / (p - mu * h) : Number.POSITIVE_INFINITY;
  const a = Math.min(share, lift);
  const frontLoad = (weight * (b + h * a)) / p;
  const rear = (mu * (p - b)) / (p + mu * h);
  const rearLoad = (weight * (p - b - h * rear)) / p;
  const source = derived('ISO 8855 statics: N = m·g·(b + h·a/g)/p');
  const cases: Draft[] = [];
  if (build.brakes.front)
    cases.push({
      id: 'braking-front',
      name: 'front brake at its limit',
      basis: `Front brake alone, ${a.toFixed(2)} g: ${share <= lift ? `grip of ${mu}` : 'the rear wheel lifts'}.`,
      source,
      applied: [
        onWheel('front', whole.contact.front, { x: -a * weight, z: frontLoad }),
        onWheel('rear', whole.contact.rear, { z: weight - frontLoad }),
      ],
      hold: holds.seated,
    });
  if (build.brakes.rear)
    cases.push({
      id: 'braking-rear',
      name: 'rear brake at its limit',
      basis: `Rear brake alone, ${rear.toFixed(2)} g: grip of ${mu}.`,
      source,
      applied: [
        onWheel('front', whole.contact.front, { z: weight - rearLoad }),
        onWheel('rear', whole.contact.rear, { x: -rear * weight, z: rearLoad }),
      ],
      hold: holds.seated,
    });
  return cases;
}

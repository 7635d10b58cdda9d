import type { Build } from '../build/index.ts';
import { bad, good, type Issue, type Outcome } from '../quantity/index.ts';
import type { Layout, Stance, TireSize } from './bike.ts';
import { type StanceChange, type SteeringGeometry, standOn } from './stance.ts';

interface TirePair {
  readonly rear: TireSize;
  readonly front: TireSize;
}

/** Where in the file each stance comes from, for issues. */
const PATHS: Readonly<Record<Stance['name'], string>> = {
  design: 'wheels',
  fitted: 'wheels',
  sag: 'steering.fork.sag',
};

/** The build's steering at its design ride height, with the tires that it was jigged for. */
export const steeringGeometry = (build: Build, tires: TirePair): SteeringGeometry => ({
  wheelbase: build.steering.wheelbase,
  headAngle: build.steering.headAngle,
  forkOffset: build.steering.forkOffset,
  frontRadius: tires.front.radius,
  rearRadius: tires.rear.radius,
});

/** What each stance changes: nothing; the tires now on; these and the sag of a telescopic fork. */
export function stanceChanges(
  build: Build,
  tires: TirePair,
  fitted: TirePair,
): Readonly<Record<Stance['name'], StanceChange>> {
  const { fork } = build.steering;
  const on = ({ front, rear }: TirePair, sag: number): StanceChange => ({
    frontRadius: front.radius,
    rearRadius: rear.radius,
    sag,
    rearRise: 0,
  });
  const sag = fork.kind === 'telescopic' ? (fork.sag ?? 0) : 0;
  return { design: on(tires, 0), fitted: on(fitted, 0), sag: on(fitted, sag) };
}

/**
 * The three stances of a build.
 * @issue conflict — tires or sag with which the bike cannot stand on both wheels
 * @source derived, see `standOn`
 */
export function resolveStances(build: Build, tires: TirePair, fitted: TirePair): Outcome<Layout['stances']> {
  const design = steeringGeometry(build, tires);
  const changes = stanceChanges(build, tires, fitted);
  const issues: Issue[] = [];
  const stand = (name: Stance['name']): Stance | undefined => {
    const stance = standOn(name, design, changes[name]);
    if (stance.ok) return stance.value;
    issues.push(...stance.issues.map((issue) => ({ ...issue, path: PATHS[name] })));
    return undefined;
  };
  const [a, b] = [stand('design'), stand('fitted')];
  // With tires that do not stand the sag would only tell the same again.
  const c = b && stand('sag');
  if (a && b && c) return good({ design: a, fitted: b, sag: c });
  const [first, ...more] = issues;
  return bad(first!, ...more);
}

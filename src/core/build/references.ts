import type { Issue } from '../quantity/index.ts';
import { findChain, readTire } from '../standards/index.ts';
import { loadReferenceIssues } from './loadReferences.ts';
import { issuesAt, unknownName } from './nameIssues.ts';
import { type Names, namesOf } from './names.ts';
import { placementCircles } from './placementOrder.ts';
import { plateReferenceIssues } from './plateReferences.ts';
import type { Build, Placement, TireEntry } from './schema/index.ts';

/**
 * Checks what a schema alone can't: that every name used is defined, that ids are unique, that placements do not
 * go in a circle, and that each chain and tire marking is known. Gives every issue, not the first.
 */
export function referenceIssues(build: Build): Issue[] {
  const names = namesOf(build);
  return [
    ...placementIssues(build, names),
    ...frameIssues(build, names),
    ...drivelineIssues(build, names),
    ...stackIssues(build, names),
    ...plateReferenceIssues(build, names),
    ...loadReferenceIssues(build, names),
    ...tireIssues(build),
    ...valueIssues(build),
  ];
}

/** Placements by path, in the whole file. */
function placementsOf(build: Build): [path: string, placement: Placement][] {
  const shafts = Object.entries(build.driveline.shafts).flatMap(([name, shaft]): [string, Placement][] =>
    shaft.at ? [[`driveline.shafts.${name}.at`, shaft.at]] : [],
  );
  const bodies = Object.entries(build.bodies ?? {}).map(([name, body]): [string, Placement] => [
    `bodies.${name}.place`,
    body.place,
  ]);
  const nodes = Object.entries(build.frame.nodes).map(([name, place]): [string, Placement] => [
    `frame.nodes.${name}`,
    place,
  ]);
  const stand = build.seating.stand;
  return [
    ...nodes,
    ...shafts,
    ...bodies,
    ['engine.place', build.engine.place],
    ['steering.bars.grip', build.steering.bars.grip],
    ['seating.seat.place', build.seating.seat.place],
    ['seating.pegs.place', build.seating.pegs.place],
    ...(stand ? [['seating.stand.pivot', stand.pivot] as [string, Placement]] : []),
  ];
}

function placementIssues(build: Build, names: Names): Issue[] {
  const issues: Issue[] = [];
  for (const [path, placement] of placementsOf(build)) {
    issues.push(...unknownName(`${path}.from`, placement.from, names.places, 'datum or node'));
    if (placement.along)
      issues.push(
        ...unknownName(`${path}.along.toward`, placement.along.toward, names.places, 'datum or node'),
      );
    if (placement.up !== undefined && placement.height !== undefined) {
      issues.push({ code: 'conflict', path, reason: 'give `up` or `height`, not both' });
    }
    if (placement.left !== undefined && placement.side !== undefined) {
      issues.push({ code: 'conflict', path, reason: 'give `left` or `side`, not both' });
    }
  }
  return [...issues, ...placementCircles(build)];
}

function frameIssues(build: Build, names: Names): Issue[] {
  const nodes = Object.keys(build.frame.nodes);
  const datums = nodes.filter((name) => names.shafts.includes(name) || isDatum(name));
  const issues: Issue[] = datums.map((name) => ({
    code: 'duplicate-name',
    path: `frame.nodes.${name}`,
    given: name,
  }));
  for (const [name, tube] of Object.entries(build.frame.tubes)) {
    const path = `frame.tubes.${name}`;
    issues.push(...unknownName(`${path}.tubing`, tube.tubing, names.tubing, 'tubing'));
    tube.through.forEach((node, i) => {
      issues.push(...unknownName(`${path}.through[${i}]`, node, names.places, 'datum or node'));
      if (i > 0 && node === tube.through[i - 1]) {
        issues.push({
          code: 'conflict',
          path: `${path}.through[${i}]`,
          reason: `the tube passes "${node}" twice running`,
        });
      }
    });
    for (const end of ['start', 'end'] as const) {
      const entry = tube[end];
      if (entry?.onto) issues.push(...unknownName(`${path}.${end}.onto`, entry.onto, names.tubes, 'tube'));
      if (entry?.joint === 'cope' && !entry.onto) {
        issues.push({
          code: 'missing',
          path: `${path}.${end}.onto`,
          wanted: 'the tube that the cope fits round',
        });
      }
      if (entry?.onto === name)
        issues.push({
          code: 'conflict',
          path: `${path}.${end}.onto`,
          reason: 'a tube cannot be fitted round itself',
        });
    }
  }
  (build.shop?.tubeStock ?? []).forEach((stock, i) => {
    issues.push(...unknownName(`shop.tubeStock[${i}].tubing`, stock.tubing, names.tubing, 'tubing'));
  });
  return issues;
}

function isDatum(name: string): boolean {
  return ['origin', 'rearAxle', 'frontAxle', 'neckBottom', 'neckTop', 'engineBase', 'engineShaft'].includes(
    name,
  );
}

function drivelineIssues(build: Build, names: Names): Issue[] {
  const issues: Issue[] = [];
  for (const [name, shaft] of Object.entries(build.driveline.shafts)) {
    const path = `driveline.shafts.${name}`;
    const known = name === 'engine' || name === 'rearAxle';
    for (const field of ['at', 'diameter', 'length'] as const) {
      if (!known && shaft[field] === undefined)
        issues.push({
          code: 'missing',
          path: `${path}.${field}`,
          wanted: `the shaft's ${field === 'at' ? 'place' : field}`,
        });
      if (known && shaft[field] !== undefined)
        issues.push({
          code: 'conflict',
          path: `${path}.${field}`,
          reason: `the ${name} shaft is given elsewhere in the file`,
        });
    }
    if (shaft.rides) issues.push(...unknownName(`${path}.rides`, shaft.rides, names.shafts, 'shaft'));
  }
  build.driveline.stages.forEach((stage, i) => {
    const path = `driveline.stages[${i}]`;
    issues.push(...duplicate(names.stages, i, `${path}.id`));
    if (stage.kind === 'clutch') {
      issues.push(...unknownName(`${path}.on`, stage.on, names.shafts, 'shaft'));
      return;
    }
    issues.push(...unknownName(`${path}.from`, stage.from, names.shafts, 'shaft'));
    issues.push(...unknownName(`${path}.to`, stage.to, names.shafts, 'shaft'));
    if (stage.adjust) issues.push(...unknownName(`${path}.adjust`, stage.adjust, names.shafts, 'shaft'));
    if (stage.from === stage.to)
      issues.push({ code: 'conflict', path, reason: `the drive runs from "${stage.from}" to itself` });
    if (stage.kind === 'chain') issues.push(...issuesAt(findChain(stage.chain), `${path}.chain`));
  });
  return issues;
}

function stackIssues(build: Build, names: Names): Issue[] {
  const issues: Issue[] = [];
  const shafts = Object.values(build.stacks).map((stack) => stack.shaft);
  Object.entries(build.stacks).forEach(([name, stack], at) => {
    const path = `stacks.${name}`;
    issues.push(...unknownName(`${path}.shaft`, stack.shaft, names.shafts, 'shaft'));
    issues.push(...duplicate(shafts, at, `${path}.shaft`));
    const ids = stack.items.map((item) => item.id);
    stack.items.forEach((item, i) => {
      const here = `${path}.items[${i}]`;
      issues.push(...duplicate(ids, i, `${here}.id`));
      (item.planes ?? []).forEach((plane, k) => {
        if (plane.drive)
          issues.push(...unknownName(`${here}.planes[${k}].drive`, plane.drive, names.drives, 'drive'));
        if (plane.brake)
          issues.push(...unknownName(`${here}.planes[${k}].brake`, plane.brake, names.brakes, 'brake'));
      });
      if (item.pin?.to === 'in-line')
        issues.push(...unknownName(`${here}.pin.drive`, item.pin.drive, names.drives, 'drive'));
      if (item.pin?.to === 'caliper')
        issues.push(...unknownName(`${here}.pin.brake`, item.pin.brake, names.brakes, 'brake'));
    });
  });
  return issues;
}

function tireIssues(build: Build): Issue[] {
  return (['rear', 'front'] as const).flatMap((end) =>
    (['tire', 'fitted'] as const).flatMap((which) => {
      const tire = build.wheels[end][which];
      return tire ? tireIssue(tire, `wheels.${end}.${which}`) : [];
    }),
  );
}

function tireIssue(tire: TireEntry, path: string): Issue[] {
  const measured = tire.width !== undefined && (tire.diameter !== undefined || tire.rollout !== undefined);
  if (tire.size !== undefined) return measured ? [] : issuesAt(readTire(tire.size), `${path}.size`);
  return measured
    ? []
    : [{ code: 'missing', path, wanted: 'a size marking, or a measured width with a diameter or rollout' }];
}

/** Pairs of values that exclude each other whatever the rest of the bike is. */
function valueIssues(build: Build): Issue[] {
  const issues: Issue[] = [];
  const tubes: readonly (readonly [string, { readonly outside: number; readonly wall: number }])[] = [
    ...Object.entries(build.frame.tubing).map(([name, size]) => [`frame.tubing.${name}`, size] as const),
    ['steering.neck', build.steering.neck],
  ];
  for (const [path, size] of tubes) {
    if (size.wall * 2 >= size.outside)
      issues.push({
        code: 'conflict',
        path: `${path}.wall`,
        reason: 'the wall is half the outside diameter or more: no bore is left',
      });
  }
  build.driveline.stages.forEach((stage, i) => {
    if (stage.kind !== 'variable-belt') return;
    for (const end of ['driver', 'driven'] as const) {
      if (stage[end].smallest > stage[end].largest) {
        issues.push({
          code: 'conflict',
          path: `driveline.stages[${i}].${end}`,
          reason: 'the smallest diameter is larger than the largest',
        });
      }
    }
  });
  (build.engine.torque ?? []).forEach((point, i, curve) => {
    const before = curve[i - 1];
    if (before && point.at <= before.at)
      issues.push({
        code: 'conflict',
        path: `engine.torque[${i}].at`,
        reason: 'the torque curve must go by rising speed',
      });
  });
  return issues;
}

function duplicate(names: readonly string[], at: number, path: string): Issue[] {
  const given = names[at] as string;
  return names.indexOf(given) < at ? [{ code: 'duplicate-name', path, given }] : [];
}

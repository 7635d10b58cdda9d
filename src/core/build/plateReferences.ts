import type { Issue, Outcome } from '../quantity/index.ts';
import { clearanceHole, findBearing, findThread } from '../standards/index.ts';
import { issuesAt, unknownName } from './nameIssues.ts';
import type { Names } from './names.ts';
import type { Build, PlateEntry } from './schema/index.ts';

/** One name used by a plate: where, what it says, and the names it may be. */
type Use = readonly [path: string, given: string, known: readonly string[], wanted: string];

/** Names, bolts, threads and bearings of the plates that the file or the tables do not know. */
export function plateReferenceIssues(build: Build, names: Names): Issue[] {
  return Object.entries(build.plates).flatMap(([name, entry]) => {
    const path = `plates.${name}`;
    return [
      ...usesOf(build, entry, names).flatMap(([at, given, known, wanted]) =>
        unknownName(`${path}.${at}`, given, known, wanted),
      ),
      ...designations(entry).flatMap(([at, found]) => issuesAt(found, `${path}.${at}`)),
    ];
  });
}

function usesOf(build: Build, entry: PlateEntry, names: Names): readonly Use[] {
  switch (entry.recipe) {
    case 'axle-plate':
      return [
        ...standingUses(build, entry, entry.shaft ?? 'rearAxle', names),
        ...entry.landings.flatMap((landing, i): Use[] => [
          [`landings[${i}].at`, landing.at, names.places, 'datum or node'],
          [`landings[${i}].tubing`, landing.tubing, names.tubing, 'tubing'],
        ]),
      ];
    case 'countershaft-plate':
    case 'outboard-support':
      return standingUses(build, entry, entry.shaft ?? 'countershaft', names);
    case 'caliper-bracket':
      return [['brake', entry.brake, names.brakes, 'brake']];
    case 'gusset':
      return [
        ['at', entry.at, names.places, 'datum or node'],
        ['between[0]', entry.between[0], names.tubes, 'tube'],
        ['between[1]', entry.between[1], names.tubes, 'tube'],
      ];
    case 'engine-plate':
      return [];
    default:
      return placeUses(entry, names);
  }
}

function placeUses(
  { place }: { readonly place?: Extract<PlateEntry, { recipe: 'free' }>['place'] },
  names: Names,
): readonly Use[] {
  if (!place) return [];
  const along: Use[] = place.along
    ? [['place.along.toward', place.along.toward, names.places, 'datum or node']]
    : [];
  return [['place.from', place.from, names.places, 'datum or node'], ...along];
}

function standingUses(
  build: Build,
  entry: { readonly shaft?: string | undefined; readonly inStack?: string | undefined },
  shaft: string,
  names: Names,
): readonly Use[] {
  const items = Object.values(build.stacks)
    .filter((stack) => stack.shaft === shaft)
    .flatMap((stack) => stack.items.map((item) => item.id));
  const inStack: Use[] =
    entry.inStack === undefined ? [] : [['inStack', entry.inStack, items, `item of the stack on ${shaft}`]];
  return [['shaft', shaft, names.shafts, 'shaft'], ...inStack];
}

/** Every bolt, thread and bearing that a plate names, looked up. */
function designations(entry: PlateEntry): readonly (readonly [string, Outcome<unknown>])[] {
  const bolt = (path: string, name: string | undefined) =>
    name === undefined ? [] : [[path, clearanceHole(name)] as const];
  const thread = (path: string, name: string | undefined) =>
    name === undefined ? [] : [[path, findThread(name)] as const];
  const holes = (entry.holes ?? []).flatMap((hole, i) => [
    ...bolt(`holes[${i}].bolt`, hole.bolt),
    ...thread(`holes[${i}].thread`, hole.thread),
  ]);
  switch (entry.recipe) {
    case 'engine-plate':
      return [...holes, ...bolt('rails.bolt', entry.rails.bolt)];
    case 'axle-plate':
      return [
        ...holes,
        ...(entry.adjuster?.tapped
          ? thread('adjuster.bolt', entry.adjuster.bolt)
          : bolt('adjuster.bolt', entry.adjuster?.bolt)),
      ];
    case 'countershaft-plate':
    case 'outboard-support': {
      const { seat, foot } = entry;
      const bearing =
        seat.kind === 'bore'
          ? [['seat.bearing', findBearing(seat.bearing)] as const]
          : bolt('seat.bolt', seat.bolt);
      return [...holes, ...bearing, ...bolt('foot.bolt', foot.bolt)];
    }
    case 'caliper-bracket':
      return [
        ...holes,
        ...(entry.anchors ?? []).flatMap((anchor, i) => bolt(`anchors[${i}].bolt`, anchor.bolt)),
      ];
    case 'seat-mount-front':
    case 'seat-mount-rear':
      return [
        ...holes,
        ...bolt('holePattern.bolt', entry.holePattern.bolt),
        ...bolt('tongue.bolt', entry.tongue?.bolt),
      ];
    case 'peg-tab':
    case 'stand-tab':
      return [...holes, ...bolt('bolt', entry.bolt)];
    default:
      return holes;
  }
}

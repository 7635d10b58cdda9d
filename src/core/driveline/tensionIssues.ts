import type { Issue } from '../quantity/index.ts';
import { positiveLengthIssues, teethIssues } from './teeth.ts';
import type { DriveRun, DriveShaft, TensionInput } from './tensionTypes.ts';

const MAX_FRACTION = 0.1;
/** More drives than any two-wheeler has. */
const MAX_DRIVES = 12;

/** Everything that makes the input unreadable as a drive train: unknown or doubled names, numbers out of range. */
export function tensionIssues(input: TensionInput): readonly Issue[] {
  const ids = new Set(input.shafts.map((shaft) => shaft.id));
  const driveIds = new Set(input.drives.map((drive) => drive.id));
  const { length: count } = input.drives;
  if (count > MAX_DRIVES)
    return [{ code: 'too-large', path: 'drives', given: count, max: MAX_DRIVES, unit: 'drives' }];
  return [
    ...doubled('shafts', input.shafts),
    ...doubled('drives', input.drives),
    ...input.shafts.flatMap((shaft, index) => shaftIssues(shaft, `shafts[${index}]`, ids)),
    ...input.drives.flatMap((drive, index) => driveIssues(drive, `drives[${index}]`, ids)),
    ...(input.order ?? []).flatMap((step, index) => [
      ...unknown(`order[${index}].drive`, step.drive, 'drive', driveIds),
      ...unknown(`order[${index}].slides`, step.slides, 'shaft', ids),
    ]),
    ...doubled(
      'order',
      (input.order ?? []).map((step) => ({ id: step.drive })),
    ),
  ];
}

function shaftIssues(shaft: DriveShaft, path: string, ids: ReadonlySet<string>): readonly Issue[] {
  const { slide, position } = shaft;
  const issues: Issue[] = [
    ...finite(`${path}.position.x`, position.x),
    ...finite(`${path}.position.z`, position.z),
  ];
  for (const carried of shaft.carries ?? [])
    issues.push(...unknown(`${path}.carries`, carried, 'shaft', ids));
  if (!slide) return issues;
  const size = Math.hypot(slide.direction.x, slide.direction.z);
  if (!(Number.isFinite(size) && size > 0)) {
    issues.push({ code: 'conflict', path: `${path}.slide.direction`, reason: 'a slide needs a direction' });
  }
  if (slide.pusherPitch !== undefined) {
    issues.push(...positiveLengthIssues(`${path}.slide.pusherPitch`, slide.pusherPitch));
  }
  const { travelMin, travelMax } = slide;
  issues.push(
    ...finite(`${path}.slide.travelMin`, travelMin ?? 0),
    ...finite(`${path}.slide.travelMax`, travelMax ?? 0),
  );
  if (travelMin !== undefined && travelMax !== undefined && travelMax < travelMin) {
    const min = travelMin * 1000;
    issues.push({
      code: 'out-of-range',
      path: `${path}.slide.travelMax`,
      given: travelMax * 1000,
      min,
      unit: 'mm',
    });
  }
  return issues;
}

function driveIssues(drive: DriveRun, path: string, ids: ReadonlySet<string>): readonly Issue[] {
  const issues: Issue[] = [
    ...unknown(`${path}.from`, drive.from, 'shaft', ids),
    ...unknown(`${path}.to`, drive.to, 'shaft', ids),
    ...range(`${path}.fitting`, (drive.fitting ?? 0) * 1000, { min: 0, max: 1000, unit: 'mm' }),
  ];
  if (drive.adjust !== undefined) issues.push(...unknown(`${path}.adjust`, drive.adjust, 'shaft', ids));
  if (drive.from === drive.to) {
    issues.push({ code: 'conflict', path, reason: 'a drive needs two different shafts' });
  }
  if (drive.kind === 'chain') {
    issues.push(...positiveLengthIssues(`${path}.pitch`, drive.pitch));
    issues.push(
      ...teethIssues(`${path}.fromTeeth`, drive.fromTeeth),
      ...teethIssues(`${path}.toTeeth`, drive.toTeeth),
    );
    issues.push(...range(`${path}.wearLimit`, drive.wearLimit ?? 0, { min: 0, max: MAX_FRACTION, unit: '' }));
    if (drive.links !== undefined && !(Number.isInteger(drive.links) && drive.links > 0)) {
      issues.push({
        code: 'wrong-type',
        path: `${path}.links`,
        given: String(drive.links),
        wanted: 'a whole number of links',
      });
    }
    return issues;
  }
  issues.push(...positiveLengthIssues(`${path}.fromDiameter`, drive.fromDiameter));
  issues.push(...positiveLengthIssues(`${path}.toDiameter`, drive.toDiameter));
  issues.push(...positiveLengthIssues(`${path}.length`, drive.length));
  issues.push(...range(`${path}.stretch`, drive.stretch ?? 0, { min: 0, max: MAX_FRACTION, unit: '' }));
  return issues;
}

function doubled(path: string, items: readonly { readonly id: string }[]): readonly Issue[] {
  const seen = new Set<string>();
  return items.flatMap(({ id }, index): Issue[] => {
    if (!seen.has(id)) {
      seen.add(id);
      return [];
    }
    return [{ code: 'duplicate-name', path: `${path}[${index}]`, given: id }];
  });
}

function unknown(path: string, given: string, wanted: string, known: ReadonlySet<string>): readonly Issue[] {
  return known.has(given) ? [] : [{ code: 'unknown-name', path, given, wanted }];
}

function finite(path: string, value: number): readonly Issue[] {
  return Number.isFinite(value)
    ? []
    : [{ code: 'wrong-type', path, given: String(value), wanted: 'a length' }];
}

function range(
  path: string,
  given: number,
  limits: { readonly min: number; readonly max: number; readonly unit: string },
): readonly Issue[] {
  return given >= limits.min && given <= limits.max ? [] : [{ code: 'out-of-range', path, given, ...limits }];
}

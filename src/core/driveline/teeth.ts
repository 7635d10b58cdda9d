import type { Issue } from '../quantity/index.ts';

/** Below six teeth the standard tooth has no straight flank left to speak of and no maker cuts one. */
export const MIN_TEETH = 6;
/** No sprocket of these pitches is cut with more; a larger number is a slip of the pen. */
export const MAX_TEETH = 300;

/** Issues of a tooth count: a whole number from {@link MIN_TEETH} to {@link MAX_TEETH}. */
export function teethIssues(path: string, teeth: number): readonly Issue[] {
  if (!Number.isInteger(teeth)) {
    return [{ code: 'wrong-type', path, given: String(teeth), wanted: 'a whole number of teeth' }];
  }
  if (teeth < MIN_TEETH || teeth > MAX_TEETH) {
    return [{ code: 'out-of-range', path, given: teeth, min: MIN_TEETH, max: MAX_TEETH, unit: 'teeth' }];
  }
  return [];
}

/** Issues of a length that has to be a finite number above zero [m]; reported in mm. */
export function positiveLengthIssues(path: string, length: number): readonly Issue[] {
  if (Number.isFinite(length) && length > 0) return [];
  if (!Number.isFinite(length))
    return [{ code: 'wrong-type', path, given: String(length), wanted: 'a length' }];
  return [{ code: 'out-of-range', path, given: length * 1000, above: 0, unit: 'mm' }];
}

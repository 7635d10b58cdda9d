import table from '../../../data/standards/tires.json' with { type: 'json' };
import { bad, good, inches, type Length, mm, type Outcome, type SourceRef } from '../quantity/index.ts';

export type TireRule = 'metric' | 'code' | 'utility' | 'direct';

/** What a size marking says. */
export interface TireMarking {
  readonly rule: TireRule;
  /** Outside diameter by the rule [m]. */
  readonly outsideDiameter: Length;
  /** Section width [m]. */
  readonly width: Length;
  /** Rim diameter at the bead [m]. */
  readonly rimDiameter: Length;
  /** Likely error of the diameter, plus or minus, as a fraction of it. */
  readonly doubt: number;
  /** The rule in words. */
  readonly says: string;
  readonly source: SourceRef;
}

/** A tire by its marking, or measured; every reading wins over the marking. */
export interface TireReadings {
  /** Marking as molded on the tire. */
  readonly size?: string | undefined;
  /** Diameter under load [m], > 0. */
  readonly diameter?: number | undefined;
  /** Distance of one turn [m], > 0. */
  readonly rollout?: number | undefined;
  /** Width [m], > 0. */
  readonly width?: number | undefined;
}

/** Tire sizes to build with, and how sure they are. */
export interface TireDimensions {
  /** R, rolling radius: rollout / 2π, else half the diameter [m]. */
  readonly radius: Length;
  /** Section width [m]. */
  readonly width: Length;
  /** Rim diameter at the bead by the marking [m]; absent without one. */
  readonly rimDiameter?: Length;
  readonly by: 'rollout' | 'diameter' | 'marking';
  /** Likely error of the radius, plus or minus [m]. */
  readonly doubt: Length;
  readonly source: SourceRef;
}

const EXAMPLES = '90/90-10, 3.50-10, 4.10/3.50-4 or 13x5.00-6';

/** Longer texts are no markings; reading them would only cost time. */
const LONGEST = 80;

/** Widths and heights above this in both places of a metric-looking marking are hundredths of an inch (410/350-4). */
const HUNDREDTHS_FROM = 200;

const rimByCode: ReadonlyMap<number, Length> = new Map(
  table.rimCodes.rows.map((row) => [row.code, mm(row.diameterMm)] as const),
);

const number = '(\\d+(?:\\.\\d+)?)';
const rimPart = `(?:-|z?r|b)(\\d{1,2}(?:\\.\\d+)?)`;
/** Load index, speed symbol, ply rating and the like follow the size and do not change it. */
const rest = '(?:[^\\d.].*|)';
const patterns = {
  direct: new RegExp(`^${number}x${number}${rimPart}${rest}$`),
  slash: new RegExp(`^(?:p|lt|st|at)?${number}/${number}${rimPart}${rest}$`),
  code: new RegExp(`^${number}${rimPart}${rest}$`),
};

/**
 * Reads a tire size marking by the rule of its form: W/AR-code (metric), S-code, A/B-code (utility), D x W-code.
 * The diameter is an estimate to ±5 % whatever the form.
 * @issue unreadable — no form of marking that is known
 * @issue not-in-table — a rim code that is not in the code table
 * @source un-r75, section 6 (metric); practice (the other forms)
 */
export function readTire(size: string): Outcome<TireMarking> {
  const text = size.length > LONGEST ? '' : plainMarking(size);
  const direct = patterns.direct.exec(text);
  if (direct) {
    return marking('direct', direct[3]!, size, () => ({
      diameter: inches(+direct[1]!),
      width: inches(+direct[2]!),
    }));
  }
  const slash = patterns.slash.exec(text);
  if (slash) return slashMarking(slash, size);
  const code = patterns.code.exec(text);
  if (code && +code[1]! > 0 && +code[1]! < 20) {
    const width = inches(+code[1]!);
    return marking('code', code[2]!, size, (rim) => ({ diameter: rim + 2 * width, width }));
  }
  return bad({ code: 'unreadable', path: '', given: size, wanted: 'a tire size marking', example: EXAMPLES });
}

/**
 * Rolling radius and width of a tire: R = rollout / 2π where measured, else half the measured diameter, else half
 * the diameter of the marking; a measured width wins over the marking's.
 * @issue missing — neither a marking nor a measured diameter or rollout; no width
 * @issue unreadable, not-in-table — the marking is needed and is not understood
 * @source derived, one turn of a wheel rolls 2πR
 */
export function tireDimensions(tire: TireReadings): Outcome<TireDimensions> {
  const read = tire.size === undefined ? undefined : readTire(tire.size);
  const measured = measuredRadius(tire);
  if (read && !read.ok && (!measured || tire.width === undefined)) {
    const [first, ...more] = read.issues;
    return bad({ ...first, path: 'size' }, ...more.map((issue) => ({ ...issue, path: 'size' })));
  }
  const marked = read?.ok ? read.value : undefined;
  if (!measured && !marked) {
    return bad({ code: 'missing', path: '', wanted: 'a size marking, or a measured rollout or diameter' });
  }
  const width = tire.width ?? marked?.width;
  if (width === undefined)
    return bad({ code: 'missing', path: 'width', wanted: 'the width of a tire without a size marking' });
  return good({
    ...(measured ?? markedRadius(marked!)),
    width: width as Length,
    ...(marked ? { rimDiameter: marked.rimDiameter } : {}),
  });
}

function slashMarking(match: RegExpExecArray, size: string): Outcome<TireMarking> {
  const [first, second] = [+match[1]!, +match[2]!];
  const hundredths = first >= HUNDREDTHS_FROM && second >= HUNDREDTHS_FROM;
  if (hundredths || (first < 20 && second < 20)) {
    const scale = hundredths ? 1 / 100 : 1;
    const [width, height] = [inches(first * scale), inches(second * scale)];
    return marking('utility', match[3]!, size, () => ({ diameter: inches(+match[3]!) + 2 * height, width }));
  }
  if (second < 20 || second > 130) {
    return bad({
      code: 'unreadable',
      path: '',
      given: size,
      wanted: 'a tire size marking',
      example: EXAMPLES,
    });
  }
  const height = mm(Math.round((first * second) / 100));
  return marking('metric', match[3]!, size, (rim) => ({ diameter: rim + 2 * height, width: mm(first) }));
}

function marking(
  rule: TireRule,
  code: string,
  size: string,
  sizes: (rim: Length) => { readonly diameter: number; readonly width: Length },
): Outcome<TireMarking> {
  const rim = rimByCode.get(+code);
  if (rim === undefined) {
    const nearest = [...rimByCode.keys()]
      .sort((a, b) => Math.abs(a - +code) - Math.abs(b - +code))
      .slice(0, 3);
    return bad({
      code: 'not-in-table',
      path: '',
      given: `${size} (rim code ${code})`,
      nearest: nearest.map(String),
    });
  }
  const { diameter, width } = sizes(rim);
  if (!(width > 0 && diameter > rim)) {
    return bad({
      code: 'unreadable',
      path: '',
      given: size,
      wanted: 'a tire larger than its rim',
      example: EXAMPLES,
    });
  }
  const { rule: says, source } = table.rules[rule];
  const doubt = table.markingDoubt.fraction;
  return good({ rule, outsideDiameter: diameter as Length, width, rimDiameter: rim, doubt, says, source });
}

function measuredRadius(
  tire: TireReadings,
): Pick<TireDimensions, 'radius' | 'by' | 'doubt' | 'source'> | undefined {
  const { source, rolloutDoubtMm, diameterDoubtMm } = table.measured;
  if (tire.rollout !== undefined) {
    const turn = 2 * Math.PI;
    return {
      radius: (tire.rollout / turn) as Length,
      by: 'rollout',
      doubt: mm(rolloutDoubtMm / turn),
      source,
    };
  }
  if (tire.diameter === undefined) return undefined;
  return { radius: (tire.diameter / 2) as Length, by: 'diameter', doubt: mm(diameterDoubtMm / 2), source };
}

function markedRadius(marked: TireMarking): Pick<TireDimensions, 'radius' | 'by' | 'doubt' | 'source'> {
  const radius = (marked.outsideDiameter / 2) as Length;
  return { radius, by: 'marking', doubt: (radius * marked.doubt) as Length, source: marked.source };
}

/** Lower case, without spaces, one sign for the multiplication cross and the dashes; a comma is a decimal point. */
function plainMarking(size: string): string {
  const text = size
    .trim()
    .toLowerCase()
    .replace(/[×*]/g, 'x')
    .replace(/[‐-―−]/g, '-')
    .replace(/,(?=\d)/g, '.');
  return text.replace(/\s*([x/-])\s*/g, '$1').replace(/\s*(z?r)\s*(?=\d)/g, '$1');
}

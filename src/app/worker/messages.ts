/** What goes between the page and the worker: plain data that can be cloned, numbers already printed. */
export type UnitSystem = 'in' | 'mm' | 'both';

/** A quantity as text in each unit system. */
export type Printed = Readonly<Record<UnitSystem, string>>;

export interface ScreenIssue {
  /** Path of the field as text; '' is the whole file. */
  readonly path: string;
  /** What was found and what is wanted. */
  readonly text: string;
}

export interface ScreenSource {
  /** Title of the source, or what stands in for one. */
  readonly title: string;
  readonly where: string;
}

export interface ScreenFigure {
  readonly id: string;
  readonly name: string;
  readonly symbol: string;
  readonly value: Printed;
  readonly formula: string;
  readonly inputs: readonly { readonly name: string; readonly value: Printed }[];
  readonly source: ScreenSource;
}

export interface ScreenFinding {
  /** Unique in an answer. */
  readonly key: string;
  readonly severity: 'stop' | 'caution' | 'note';
  readonly question: 'together' | 'hold' | 'ride' | 'make';
  readonly part: string;
  readonly path?: string;
  readonly what: string;
  readonly why: string;
  readonly remedy?: string;
  readonly value?: Printed;
  readonly limit?: Printed;
  readonly margin?: Printed;
  readonly source: ScreenSource;
}

export interface ScreenChange {
  readonly id: string;
  readonly name: string;
  readonly how: 'changed' | 'new' | 'gone' | 'drifted';
  readonly before?: Printed;
  readonly after?: Printed;
  readonly change?: Printed;
  readonly part: string;
  readonly state?: string;
  /** What an existing part was made to, when it no longer is what the figure says. */
  readonly alreadyCut?: Printed;
}

/** What differs between two results. */
export interface Difference {
  readonly figures: readonly ScreenChange[];
  readonly found: readonly ScreenFinding[];
  readonly cleared: readonly ScreenFinding[];
}

export interface SheetName {
  readonly id: string;
  readonly title: string;
  readonly scale?: string;
  readonly group: string;
}

export interface ChainLineRow {
  readonly drive: string;
  readonly driver: Printed;
  readonly driven: Printed;
  readonly offset: Printed;
  readonly limit: Printed;
  readonly angle: Printed;
  readonly within: boolean;
  readonly sides: readonly {
    readonly from: string;
    readonly steps: readonly {
      readonly label: string;
      readonly length: Printed;
      readonly to: Printed;
      readonly make: boolean;
    }[];
  }[];
  readonly options: readonly {
    readonly text: string;
    readonly length: Printed;
    readonly hindrance?: string;
  }[];
}

export interface TireGapRow {
  readonly against: string;
  readonly gap: Printed;
  readonly limit: Printed;
  readonly within: boolean;
}

/** The result of one solve. */
export interface Answer {
  /** Counts the good solves of this worker; drawings are asked for by it. */
  readonly revision: number;
  readonly name: string;
  readonly findings: readonly ScreenFinding[];
  readonly figures: readonly ScreenFigure[];
  readonly sinceEdit: Difference;
  readonly sinceOpening: Difference;
  readonly lines: readonly ChainLineRow[];
  readonly gaps: readonly TireGapRow[];
  /** What the program did not look at. */
  readonly notChecked: readonly string[];
  readonly milliseconds: number;
}

export type Reply =
  | { readonly ok: true; readonly answer: Answer }
  | { readonly ok: false; readonly issues: readonly ScreenIssue[] };

/** Triangles ready to draw: three corners a triangle, and the sharp edges as pairs of points. */
export interface SolidPart {
  readonly name: string;
  readonly part: string;
  readonly look: string;
  readonly positions: Float32Array;
  readonly normals: Float32Array;
  readonly edges: Float32Array;
}

/** A load case to choose. */
export interface ScreenCase {
  readonly id: string;
  readonly name: string;
  /** In one sentence, with the numbers used. */
  readonly basis: string;
}

/** Use of a limit, printed. */
export interface PartUse {
  readonly part: string;
  readonly percent: string;
  readonly isOver: boolean;
}

/** A place of the bike that is used most, over all cases. */
export interface WorstPlace extends PartUse {
  readonly where: string;
  readonly quantity: string;
  readonly caseId: string;
  readonly case: string;
  readonly value: Printed;
  readonly limit: Printed;
  readonly limitWord: 'at most' | 'at least';
}

export interface ScreenStrength {
  readonly cases: readonly ScreenCase[];
  readonly worst: readonly WorstPlace[];
  /** What the model of the frame could not take as drawn. */
  readonly flaws: readonly string[];
}

/** A natural frequency of the frame, printed. */
export interface ScreenFrequency {
  readonly hertz: string;
  /** What moves most, and which way. */
  readonly what: string;
  /** Engine speeds that drive it, where they lie in the engine's range. */
  readonly firing?: Printed;
  readonly turning?: Printed;
}

/** What shakes the frame, and would buckle it as a whole. */
export interface ScreenShaking {
  readonly frequencies: readonly ScreenFrequency[];
  readonly engine?: {
    readonly idle: Printed;
    readonly governed: Printed;
    readonly isIdleGiven: boolean;
    readonly fires: boolean;
    readonly range: string;
  };
  readonly buckling?: { readonly factor: string; readonly case: string; readonly what: string };
  readonly flaws: readonly string[];
}

/** A frame part as triangles that know at each corner its use of the limit [-] and its place along the part [m]. */
export interface UsedTube extends SolidPart {
  readonly use: Float32Array;
  readonly along: Float32Array;
}

export interface StrengthPicture {
  readonly tubes: readonly UsedTube[];
  /** The most of each part drawn, the most used first. */
  readonly uses: readonly PartUse[];
  /** Largest movement of the case. */
  readonly largest?: Printed;
  /** How many times the movement is drawn. */
  readonly factor?: string;
}

/** What a sheet is printed with; the date is the page's, as the core has no clock. */
export interface SheetPrint {
  readonly units: UnitSystem;
  readonly date: string;
}

export type Sight = 'left' | 'right' | 'top';

/** What the worker does. A revision that is no longer held gives undefined: a newer answer is on its way. */
export interface SolverApi {
  schema(): object;
  /** JSON text to a value, with the place of each error. */
  readText(
    text: string,
  ):
    | { readonly ok: true; readonly value: unknown }
    | { readonly ok: false; readonly issues: readonly ScreenIssue[] };
  /** `step` and `opened` say what the two differences start from: a new number starts anew. */
  solve(file: unknown, marks: { readonly step: number; readonly opened: number }): Reply;
  picture(revision: number, sight: Sight, withRider: boolean): string | undefined;
  solids(revision: number): readonly SolidPart[] | undefined;
  strength(revision: number): ScreenStrength | undefined;
  /** Takes longer than a solve. */
  shaking(revision: number): ScreenShaking | undefined;
  /** Without a case: the worst of all, unmoved. */
  strengthPicture(
    revision: number,
    caseId: string | undefined,
    isMoved: boolean,
  ): StrengthPicture | undefined;
  sheets(revision: number, printed: SheetPrint): readonly SheetName[] | undefined;
  sheet(revision: number, printed: SheetPrint, id: string): string | undefined;
}

import type { MaterialName, StackItemKind } from '../build/index.ts';
import type { Centerline, Frame3, Mesh, Point3 } from '../geometry/index.ts';
import type { SourceRef } from '../quantity/index.ts';

/** A wheel size and where it was read from. */
export interface TireSize {
  /** Unloaded outside diameter / 2, or rollout / 2π where measured [m]. */
  readonly radius: number;
  /** Section width [m]. */
  readonly width: number;
  /** Rim diameter at the bead [m]. */
  readonly rimDiameter: number;
  /** How the radius was found. */
  readonly by: 'rollout' | 'diameter' | 'marking';
  /** Likely error of the radius, plus or minus [m]: 5 % for a marking. */
  readonly doubt: number;
  readonly source: SourceRef;
}

/** How the bike stands: with the tires it was jigged for, with those now fitted, or with sag. */
export interface Stance {
  readonly name: 'design' | 'fitted' | 'sag';
  /** Front and rear tire radius [m]. */
  readonly frontRadius: number;
  readonly rearRadius: number;
  /** Pitch of the frame against the design stance, nose down positive [rad]. */
  readonly pitch: number;
  /** [m] */
  readonly wheelbase: number;
  /** Steering axis from the ground [rad]. */
  readonly headAngle: number;
  /** Rake, from vertical [rad]. */
  readonly rake: number;
  /** c, trail on the ground [m]. */
  readonly trail: number;
  /** c_n, normal trail, square to the steering axis [m]. */
  readonly normalTrail: number;
  /** f, wheel flop factor c·sin ε·cos ε [m]. */
  readonly flop: number;
  /** Map from design-stance coordinates to this stance: where a frame point lies now. */
  readonly frame: Frame3;
}

/** The fixed points and sizes from which everything else is placed, at the design stance. */
export interface Layout {
  readonly rearTire: TireSize;
  readonly frontTire: TireSize;
  readonly stances: { readonly design: Stance; readonly fitted: Stance; readonly sag: Stance };
  /** Datums and nodes by name, mirrored nodes as `name.right` [m]. */
  readonly points: Readonly<Record<string, Point3>>;
  /** Unit vector up the steering axis (toward the rider: x < 0). */
  readonly steeringAxis: Point3;
  /** Shaft centers as drawn, before any slide [m]; includes `engine`, `rearAxle`, `frontAxle`. */
  readonly shafts: Readonly<Record<string, Point3>>;
  /** The tires now on; the same as those of the design where none is given as fitted. */
  readonly fitted: { readonly rear: TireSize; readonly front: TireSize };
  readonly places: LayoutPlaces;
}

/** Placements of the file that no other placement starts from [m]. */
export interface LayoutPlaces {
  /** Top of the seat where the rider sits. */
  readonly seat: Point3;
  /** Middle of the left peg. */
  readonly peg: Point3;
  /** Middle of the left grip. */
  readonly grip: Point3;
  /** Pivot of the side stand. */
  readonly stand?: Point3;
  /** Middle of each body of `bodies`. */
  readonly bodies: Readonly<Record<string, Point3>>;
}

/** One item of a stack with its place across the bike. */
export interface PlacedItem {
  readonly id: string;
  readonly kind: StackItemKind;
  /** Y of its left and right faces [m], left > right. */
  readonly left: number;
  readonly right: number;
  /** Length along the shaft [m] = left − right. */
  readonly length: number;
  /** True where the length was worked out here: a spacer to make. */
  readonly solved: boolean;
  readonly outside: number;
  readonly bore: number;
  readonly planes: readonly PlacedPlane[];
  readonly note?: string;
}

export interface PlacedPlane {
  readonly runs: 'rim' | 'sprocket' | 'sheave' | 'disc';
  readonly drive?: string;
  readonly brake?: string;
  /** [m] */
  readonly y: number;
}

/** A gap between what two pins ask and what lies between them. */
export interface StackMisfit {
  readonly stack: string;
  /** Items at the two ends of the run that does not close. */
  readonly between: readonly [string, string];
  /** Given length less available length [m]: + too long, − loose. */
  readonly excess: number;
}

/** Something that keeps a stack from being solved at all. */
export interface StackGap {
  readonly stack: string;
  readonly reason: 'two-unknowns' | 'no-pin' | 'negative-spacer' | 'unknown-drive' | 'circular';
  readonly items: readonly string[];
  /** For a negative spacer: the length that came out [m]. */
  readonly length?: number;
}

export interface PlacedStack {
  readonly id: string;
  readonly shaft: string;
  readonly items: readonly PlacedItem[];
  readonly axle?: {
    readonly diameter: number;
    readonly length: number;
    /** Y of the two ends [m]. */
    readonly left: number;
    readonly right: number;
    readonly threadLeft: number;
    readonly threadRight: number;
    readonly pitch: number;
    /** Thread standing out beyond the outermost items at each end [m]; negative: too short. */
    readonly outLeft: number;
    readonly outRight: number;
  };
  /** Sleeves between a bore and a thinner axle: inside = axle, outside = bore, length [m]. */
  readonly sleeves: readonly {
    readonly item: string;
    readonly inside: number;
    readonly outside: number;
    readonly length: number;
  }[];
  readonly misfits: readonly StackMisfit[];
  readonly gaps: readonly StackGap[];
}

/** One step of the lateral ladder: a length between two planes and what it is. */
export interface LadderStep {
  readonly label: string;
  /** [m], toward the step's own side */
  readonly length: number;
  readonly from: number;
  readonly to: number;
  readonly part?: string;
  /** True for a spacer to make. */
  readonly solved?: boolean;
}

/** A way to bring two planes in line, and what stands in the way. */
export interface SpacerOption {
  readonly stack: string;
  readonly item: string;
  /** Change of its length [m]. */
  readonly change: number;
  /** New length [m]. */
  readonly length: number;
  /** The worked-out spacer that is then left out; without it the option closes an offset or is that spacer itself. */
  readonly insteadOf?: string;
  /** Undefined when nothing stands in the way. */
  readonly hindrance?: string;
}

/** One chain or belt line: the same plane reached from two sides. */
export interface ChainLine {
  readonly drive: string;
  readonly kind: 'chain' | 'variable-belt';
  /** Y of the driving and driven planes [m]. */
  readonly driverY: number;
  readonly drivenY: number;
  /** driverY − drivenY [m]. */
  readonly offset: number;
  /** Distance of the two shafts seen from the side [m]. */
  readonly centerDistance: number;
  /** atan(offset / center distance) [rad]. */
  readonly angle: number;
  /** Limit of the offset [m]. */
  readonly limit: number;
  readonly within: boolean;
  /** From the plane the other way round: the steps from the rim center to the driven plane, and from engine face to the driver plane. */
  readonly drivenSteps: readonly LadderStep[];
  readonly driverSteps: readonly LadderStep[];
  readonly options: readonly SpacerOption[];
}

/** Side clearance between the tire (with growth) and the nearest chain, fork leg or plate. */
export interface TireGap {
  readonly against: string;
  /** [m] */
  readonly gap: number;
  readonly limit: number;
  readonly within: boolean;
  readonly steps: readonly LadderStep[];
}

/** The lateral ladder of the whole bike. */
export interface Ladder {
  readonly lines: readonly ChainLine[];
  readonly gaps: readonly TireGap[];
}

/** A tube in place. */
export interface PlacedTube {
  /** Entry name, with `.right` on a mirrored one. */
  readonly id: string;
  readonly entry: string;
  readonly hand: 'left' | 'right' | 'center';
  readonly centerline: Centerline;
  readonly outside: number;
  readonly wall: number;
  readonly material: MaterialName;
  readonly ends: readonly [PlacedTubeEnd, PlacedTubeEnd];
  readonly purpose?: string;
  readonly mass: number;
}

export interface PlacedTubeEnd {
  readonly joint: 'cope' | 'square' | 'flattened' | 'plugged';
  readonly node: string;
  /** For a cope: the tube it fits round. */
  readonly onto?: string;
  readonly trunkOutside?: number;
  /** Angle between the two axes [rad], 0 < angle ≤ π/2. */
  readonly angle?: number;
  /** Common-perpendicular offset of the axes [m], signed as in the cope worksheet. */
  readonly offset?: number;
  /**
   * Turn about the tube of the cope's φ = 0 (the heel), from the tube's reference direction [rad], in the sense of φ:
   * clockwise as seen from the far end. Reference: the inside of the first bend, carried along without twist; on a
   * straight tube its upper side, or forward side where it is steep.
   */
  readonly clock?: number;
  /** From the end of the centerline back to the longest and shortest point of the cut [m]; 0 for square. */
  readonly longPoint: number;
  readonly shortPoint: number;
  readonly leaveLong: number;
}

/** Something about a tube that cannot be made as drawn; turned into a finding by the findings room. */
export interface TubeFlaw {
  /** Id of the placed tube. */
  readonly tube: string;
  readonly end?: 'start' | 'end';
  /**
   * no-centerline: no tube passes these points, and none is placed; bends-overlap: the bends have no room, drawn with a
   * smaller radius; no-cope: this tube does not fit round that one, drawn cut square; bend-in-cope: the bend begins
   * before the cope ends; copes-meet: the tube is so short that nothing is left of it, taken without mass.
   */
  readonly rule: 'no-centerline' | 'bends-overlap' | 'no-cope' | 'bend-in-cope' | 'copes-meet';
  readonly reason: string;
  /** Wanted against possible [m]: bend radius, or straight length at the end against the cope's. */
  readonly value?: number;
  readonly limit?: number;
}

/** A lump with mass for the sums of mass, center and inertia. */
export interface MassPart {
  readonly id: string;
  readonly label: string;
  readonly mass: number;
  readonly center: Point3;
  /** About its own center, bike axes: Ixx, Iyy, Izz, Ixy, Iyz, Ixz as tensor entries [kg·m²]. */
  readonly inertia: readonly [number, number, number, number, number, number];
  /** Which rigid body of the bike it belongs to. */
  readonly body: 'frame' | 'front' | 'rearWheel' | 'frontWheel' | 'rider';
}

export interface MassSummary {
  readonly parts: readonly MassPart[];
  /** With rider [kg]; `bare` without. */
  readonly total: number;
  readonly bare: number;
  readonly center: Point3;
  readonly bareCenter: Point3;
  /** About the center with rider [kg·m²]. */
  readonly inertia: readonly [number, number, number, number, number, number];
  /** Vertical wheel loads with rider at rest [N]. */
  readonly frontLoad: number;
  readonly rearLoad: number;
}

/** The rider as a linked figure at rest, left side; points in order of the links [m]. */
export interface RiderFigure {
  readonly hip: Point3;
  readonly knee: Point3;
  readonly ankle: Point3;
  readonly toe: Point3;
  readonly shoulder: Point3;
  readonly elbow: Point3;
  readonly grip: Point3;
  readonly head: Point3;
  readonly headRadius: number;
  /** Links that could not reach, by name; the figure is then drawn at full stretch. */
  readonly outOfReach: readonly string[];
}

/** The engine as it sits, after the slide that the driveline asked for. */
export interface PlacedEngine {
  /** Center of the mounting pattern on the base plane. */
  readonly base: Point3;
  readonly tilt: number;
  readonly shaft: Point3;
  /** +1 left, −1 right. */
  readonly side: 1 | -1;
  /** Y of the engine face and of the shaft end [m]. */
  readonly faceY: number;
  readonly shaftEndY: number;
  /** Box of the engine: center, half sizes in engine axes. */
  readonly box: { readonly frame: Frame3; readonly half: Point3 };
  /** Mounting hole centers on the base plane, in the order front-left, front-right, rear-left, rear-right. */
  readonly holes: readonly [Point3, Point3, Point3, Point3];
}

/** A brake disc or drum in place. */
export interface PlacedBrake {
  readonly wheel: 'front' | 'rear';
  readonly kind: 'disc' | 'band' | 'drum';
  readonly y: number;
  readonly radius: number;
  readonly center: Point3;
  readonly thickness: number;
}

/** The bike with every part in its place at the design stance. */
export interface Bike {
  readonly layout: Layout;
  readonly engine: PlacedEngine;
  /** Shaft centers after the slides that the driveline asked for [m]. */
  readonly shafts: Readonly<Record<string, Point3>>;
  readonly tubes: readonly PlacedTube[];
  readonly tubeFlaws: readonly TubeFlaw[];
  readonly stacks: Readonly<Record<string, PlacedStack>>;
  readonly ladder: Ladder;
  readonly brakes: readonly PlacedBrake[];
  readonly rider: RiderFigure;
}

/** A solid for the 3D view and the glTF file. */
export interface BodyMesh {
  readonly name: string;
  readonly part: string;
  readonly look:
    | 'frame'
    | 'wheel'
    | 'tire'
    | 'engine'
    | 'chain'
    | 'plate'
    | 'seat'
    | 'fork'
    | 'rider'
    | 'body'
    | 'shaft'
    | 'disc';
  readonly mesh: Mesh;
}

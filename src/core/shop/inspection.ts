import { type Bike, CHAIN_OFFSET, SHAFT_SLOPE } from '../bike/index.ts';
import type { Build } from '../build/index.ts';
import type { DrivelineSolution } from '../driveline/index.ts';
import type { QuantityKind } from '../quantity/index.ts';
import type { FitUpSheet } from './fitUp.ts';

/** One thing to measure on the finished bike. */
export interface InspectionRow {
  readonly what: string;
  /** SI by `kind`. */
  readonly wanted: number;
  /** Plus or minus. */
  readonly tolerance: number;
  readonly kind: QuantityKind;
  readonly with: string;
}

const HALF_DEGREE = Math.PI / 360;
const AXLE_ENDS = 1.5e-3;
const RIM_CENTER = 1e-3;
const DISC_CENTER = 0.5e-3;

/** What to check on the finished frame and bike, with what instrument. @source practice, fit-up tolerances */
export function inspectionList(
  build: Build,
  {
    bike,
    driveline,
    fitUp,
  }: { readonly bike: Bike; readonly driveline: DrivelineSolution; readonly fitUp: FitUpSheet },
): readonly InspectionRow[] {
  const { design } = bike.layout.stances;
  const tape = instrument('tape', build.shop?.instruments?.tape);
  return [
    {
      what: 'wheelbase, left and right alike',
      wanted: design.wheelbase,
      tolerance: 3e-3,
      kind: 'length',
      with: tape,
    },
    {
      what: 'head angle',
      wanted: design.headAngle,
      tolerance: HALF_DEGREE,
      kind: 'angle',
      with: 'angle finder on the neck bar',
    },
    ...fitUp.diagonals.slice(0, 6).map(
      (diagonal): InspectionRow => ({
        what: diagonal.name,
        wanted: diagonal.length,
        tolerance: AXLE_ENDS,
        kind: 'length',
        with: tape,
      }),
    ),
    {
      what: 'rear rim center from the frame center line',
      wanted: 0,
      tolerance: RIM_CENTER,
      kind: 'length',
      with: 'caliper to both rim edges',
    },
    {
      what: 'front rim center from the fork center line',
      wanted: 0,
      tolerance: RIM_CENTER,
      kind: 'length',
      with: 'caliper to both rim edges',
    },
    ...bike.ladder.lines.map(
      (line): InspectionRow => ({
        what: `sprocket or sheave faces of ${line.drive} in line`,
        wanted: 0,
        tolerance: line.limit ?? CHAIN_OFFSET,
        kind: 'length',
        with: 'straightedge over both faces',
      }),
    ),
    ...Object.values(driveline.chains).map(
      (chain): InspectionRow => ({
        what: `shafts of ${chain.stage.id} parallel, over ${Math.round(SPAN * 1000)} mm`,
        wanted: 0,
        tolerance: SHAFT_SLOPE * SPAN,
        kind: 'length',
        with: 'caliper between the shafts at both ends',
      }),
    ),
    ...Object.values(driveline.chains).flatMap((chain): InspectionRow[] =>
      chain.plan
        ? [
            {
              what: `center distance of ${chain.stage.id}, new`,
              wanted: chain.center,
              tolerance: 0.5e-3,
              kind: 'length',
              with: 'caliper over both shafts, less the radii',
            },
            {
              what: `play of ${chain.stage.id} mid-span, tightest spot`,
              wanted: chain.plan.slack.play,
              tolerance: chain.plan.slack.play / 4,
              kind: 'length',
              with: 'rule',
            },
          ]
        : [],
    ),
    ...bike.brakes
      .filter((brake) => brake.kind === 'disc')
      .map(
        (brake): InspectionRow => ({
          what: `${brake.wheel} disc in the middle of its caliper`,
          wanted: 0,
          tolerance: DISC_CENTER,
          kind: 'length',
          with: 'feeler gauges both sides',
        }),
      ),
  ];
}

/** Length over which shafts are compared [m]. */
const SPAN = 0.2;

function instrument(name: string, reads: number | undefined): string {
  return reads === undefined ? name : `${name}, read to ${reads * 1000} mm`;
}

import type { Build } from '../../build/index.ts';
import {
  circleLoop,
  extrudedMesh,
  joinMeshes,
  latheMesh,
  type Mesh,
  type Point,
  type Point3,
} from '../../geometry/index.ts';
import type { Bike, BodyMesh, TireSize } from '../bike.ts';
import { axleFrame, ringMesh, sideFrame } from './solids.ts';

const SECTION_POINTS = 20;
/** Tread flatter than an ellipse: exponent of the section's curve. */
const SQUARENESS = 0.75;
const RIM_WINDOWS = 5;
const TOLERANCE = 0.2e-3;

/** Tires, rims and hubs at the wheels' axles, with the tires now on. */
export function wheelMeshes(build: Build, bike: Bike): BodyMesh[] {
  return (['rear', 'front'] as const).flatMap((end): BodyMesh[] => {
    const tire = bike.layout.fitted[end];
    const center = bike.shafts[end === 'rear' ? 'rearAxle' : 'frontAxle']!;
    const { width, flange, rimOffset = 0, bore } = build.wheels[end].hub;
    const hubRadius = Math.max((flange ?? 0) / 2, bore);
    const part = `wheels.${end}`;
    const hub = { ...center, y: center.y - rimOffset };
    return [
      { name: `${end} tire`, part, look: 'tire', mesh: tireMesh(tire, center) },
      { name: `${end} rim`, part, look: 'wheel', mesh: rimMesh(tire, center, hubRadius) },
      { name: `${end} hub`, part, look: 'wheel', mesh: ringMesh(hub, bore / 2, hubRadius, width) },
    ];
  });
}

/** Section from bead to tread as a flattened ellipse of the tire's width and height. */
function tireMesh(tire: TireSize, center: Point3): Mesh {
  const height = (tire.radius - tire.rimDiameter / 2) / 2;
  const power = (value: number): number => Math.sign(value) * Math.abs(value) ** SQUARENESS;
  const profile = Array.from({ length: SECTION_POINTS }, (_, k): Point => {
    const turn = (2 * Math.PI * k) / SECTION_POINTS;
    return {
      x: tire.radius - height + height * power(Math.cos(turn)),
      y: (tire.width / 2) * power(Math.sin(turn)),
    };
  });
  return latheMesh(axleFrame(center), profile, 72);
}

/** A rim band and a dished plate with round windows down to the hub. */
function rimMesh(tire: TireSize, center: Point3, hubRadius: number): Mesh {
  const outside = tire.rimDiameter / 2;
  const inside = outside * 0.9;
  const band = ringMesh(center, inside, outside * 1.03, tire.width * 0.75, 72);
  const room = inside - hubRadius;
  if (!(room > 4 * TOLERANCE)) return band;
  const ring = (inside + hubRadius) / 2;
  const window = Math.min(room * 0.36, (ring * Math.PI) / RIM_WINDOWS / 1.5);
  const windows = Array.from({ length: RIM_WINDOWS }, (_, k) => {
    const turn = (2 * Math.PI * k) / RIM_WINDOWS + Math.PI / 2;
    return circleLoop({ x: ring * Math.cos(turn), y: ring * Math.sin(turn) }, window);
  });
  const plate = extrudedMesh({
    frame: sideFrame(center.y, { x: center.x, y: center.z }),
    outline: circleLoop({ x: 0, y: 0 }, inside * 1.01),
    holes: windows,
    from: -4e-3,
    to: 4e-3,
    chordTolerance: TOLERANCE,
  });
  return joinMeshes([band, plate]);
}

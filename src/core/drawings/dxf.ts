import type { Loop, Point } from '../geometry/index.ts';
import type { CutFile } from './cutFile.ts';

/** Layers of a pattern; a kerf-adjusted copy has its own, so that it is never cut together with the true one. */
export const dxfLayers = { cut: 'CUT', mark: 'MARK', bend: 'BEND', kerf: 'CUT-KERF' } as const;

const MM = 1000;
/** Index colors of the exchange format: 7 black/white, 5 blue, 3 green, 1 red. */
const COLORS = { cut: 7, mark: 3, bend: 5, kerf: 1 } as const;
/** Arm of the cross at a punch mark [mm]. */
const CROSS_ARM = 2;

/**
 * A part as DXF in millimeters ($INSUNITS 4): outlines and openings as closed LWPOLYLINEs with bulges (true arcs),
 * holes as CIRCLEs on CUT; punch marks as POINTs under small crosses, scribed lines and finished outlines on MARK; bend
 * lines on BEND.
 */
export async function dxfOfPattern(cut: CutFile): Promise<string> {
  const { DxfWriter, LWPolylineFlags, Units, point2d, point3d } = await import('@tarikjabiri/dxf');
  const dxf = new DxfWriter();
  dxf.setUnits(Units.Millimeters);
  dxf.setVariable('$MEASUREMENT', { 70: 1 });
  for (const role of ['cut', 'mark', 'bend'] as const)
    dxf.addLayer(dxfLayers[role], COLORS[role], 'Continuous');
  if (cut.kerf) dxf.addLayer(dxfLayers.kerf, COLORS.kerf, 'Continuous');
  const at = (p: Point) => point3d(mm(p.x), mm(p.y), 0);
  const loop = (vertices: Loop, layerName: string): void => {
    const points = vertices.map((v) => ({ point: point2d(mm(v.x), mm(v.y)), bulge: v.bulge }));
    dxf.addLWPolyline(points, { flags: LWPolylineFlags.Closed, layerName });
  };
  const line = (from: Point, to: Point, layerName: string): void => {
    dxf.addLine(at(from), at(to), { layerName });
  };
  const shape = (part: Pick<CutFile, 'outline' | 'openings' | 'circles'>, layerName: string): void => {
    loop(part.outline, layerName);
    for (const opening of part.openings) loop(opening, layerName);
    for (const c of part.circles) dxf.addCircle(at(c.center), mm(c.diameter / 2), { layerName });
  };
  shape(cut, dxfLayers.cut);
  for (const mark of cut.marks) {
    if (mark.kind === 'line') line(mark.from, mark.to, dxfLayers.mark);
    else if (mark.kind === 'loop') loop(mark.loop, dxfLayers.mark);
    else {
      dxf.addPoint(mm(mark.at.x), mm(mark.at.y), 0, { layerName: dxfLayers.mark });
      for (const [from, to] of punchCross(mark.at)) line(from, to, dxfLayers.mark);
    }
  }
  for (const bend of cut.bends) line(bend.from, bend.to, dxfLayers.bend);
  if (cut.kerf) shape(cut.kerf, dxfLayers.kerf);
  return dxf.stringify();
}

/** The two strokes of a cross at a punch mark [m]. */
export function punchCross(at: Point): readonly (readonly [Point, Point])[] {
  const arm = CROSS_ARM / MM;
  return [
    [
      { x: at.x - arm, y: at.y },
      { x: at.x + arm, y: at.y },
    ],
    [
      { x: at.x, y: at.y - arm },
      { x: at.x, y: at.y + arm },
    ],
  ];
}

/** To a nanometer, so that the last digits of binary fractions do not clutter the file. */
function mm(length: number): number {
  if (!Number.isFinite(length)) throw new RangeError(`cannot write ${length}`);
  return Number((length * MM).toFixed(6)) + 0;
}

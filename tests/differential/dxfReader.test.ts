import { expect, test } from 'vitest';
import { type CutFile, dxfOfPattern } from '../../src/core/drawings/index.ts';
import { roundedRectangleLoop, slotLoop } from '../../src/core/geometry/index.ts';
import { runPython } from '../support/debianPython.ts';

/** Our DXF read by an independent reader (ezdxf), its audit included. */
const READ = `
import json, sys, io, ezdxf, math
doc = ezdxf.read(io.StringIO(json.load(sys.stdin)))
audit = doc.audit()
out = {'insunits': doc.header.get('$INSUNITS'), 'version': doc.dxfversion, 'errors': [str(e) for e in audit.errors], 'fixes': [str(e) for e in audit.fixes], 'layers': sorted(l.dxf.name for l in doc.layers), 'entities': []}
for e in doc.modelspace():
    r = {'type': e.dxftype(), 'layer': e.dxf.layer}
    if e.dxftype() == 'LWPOLYLINE':
        r['closed'] = bool(e.closed)
        r['points'] = [list(p) for p in e.get_points('xyb')]
        path = ezdxf.path.make_path(e) if hasattr(ezdxf, 'path') else None
        parts = list(e.virtual_entities())
        r['arcs'] = [[p.dxf.radius] for p in parts if p.dxftype() == 'ARC']
    if e.dxftype() == 'CIRCLE': r['circle'] = [e.dxf.center.x, e.dxf.center.y, e.dxf.radius]
    if e.dxftype() == 'LINE': r['line'] = [e.dxf.start.x, e.dxf.start.y, e.dxf.end.x, e.dxf.end.y]
    if e.dxftype() == 'POINT': r['point'] = [e.dxf.location.x, e.dxf.location.y]
    out['entities'].append(r)
print(json.dumps(out))
`;

interface Entity {
  readonly type: string;
  readonly layer: string;
  readonly closed?: boolean;
  readonly points?: readonly (readonly number[])[];
  readonly arcs?: readonly (readonly number[])[];
  readonly circle?: readonly number[];
  readonly line?: readonly number[];
  readonly point?: readonly number[];
}

interface Read {
  readonly insunits: number;
  readonly errors: readonly string[];
  readonly fixes: readonly string[];
  readonly layers: readonly string[];
  readonly entities: readonly Entity[];
}

const outline = roundedRectangleLoop({ x: 0, y: 0 }, 0.24, 0.19, 0.012);
if (!outline.ok) throw new Error('sample outline');
const cut: CutFile = {
  id: 'plate-engine',
  name: 'Engine plate',
  outline: outline.value,
  openings: [slotLoop({ x: -0.05, y: 0.03 }, { x: -0.02, y: 0.03 }, 0.0085)],
  circles: [{ center: { x: 0.081, y: -0.06 }, diameter: 0.0085 }],
  marks: [
    { kind: 'punch', at: { x: 0.01, y: 0.02 } },
    { kind: 'line', from: { x: 0, y: 0 }, to: { x: 0.0254, y: 0 } },
  ],
  bends: [{ from: { x: -0.12, y: 0.08 }, to: { x: 0.12, y: 0.08 }, angle: Math.PI / 2 }],
};

const read = (text: string): Read =>
  runPython(READ, text, { module: 'ezdxf', debianPackage: 'python3-ezdxf' }) as Read;

test('an independent reader finds millimeters, layers, true arcs and circles, and no fault', async () => {
  const found = read(await dxfOfPattern(cut));
  expect(found.errors).toEqual([]);
  expect(found.fixes).toEqual([]);
  // 4 = millimeters.
  expect(found.insunits).toBe(4);
  expect(found.layers).toEqual(expect.arrayContaining(['BEND', 'CUT', 'MARK']));
  const on = (layer: string, type: string) =>
    found.entities.filter((e) => e.layer === layer && e.type === type);
  const [plate, slot] = on('CUT', 'LWPOLYLINE');
  expect(plate?.closed && slot?.closed).toBe(true);
  // Coordinates and bulges to the last printed digit: 1 nm.
  plate!.points!.forEach(([x, y, b], i) => {
    expect(x).toBeCloseTo(outline.value[i]!.x * 1000, 6);
    expect(y).toBeCloseTo(outline.value[i]!.y * 1000, 6);
    expect(b).toBeCloseTo(outline.value[i]!.bulge, 12);
  });
  expect(plate!.arcs!.map(([r]) => Number(r!.toFixed(9)))).toEqual([12, 12, 12, 12]);
  expect(slot!.arcs!.map(([r]) => Number(r!.toFixed(9)))).toEqual([4.25, 4.25]);
  expect(on('CUT', 'CIRCLE').map((e) => e.circle)).toEqual([[81, -60, 4.25]]);
  expect(on('MARK', 'POINT').map((e) => e.point)).toEqual([[10, 20]]);
  expect(on('MARK', 'LINE').map((e) => e.line)).toContainEqual([0, 0, 25.4, 0]);
  expect(on('BEND', 'LINE').map((e) => e.line)).toEqual([[-120, 80, 120, 80]]);
  expect(found.entities.length).toBe(3 + 4 + 1);
});

test('kerf stands on its own layer beside the true size; same part, same text', async () => {
  const kerf = { width: 0.0015, outline: outline.value, openings: [], circles: [] };
  const found = read(await dxfOfPattern({ ...cut, kerf }));
  expect(found.entities.filter((e) => e.layer === 'CUT').length).toBe(3);
  expect(found.entities.filter((e) => e.layer === 'CUT-KERF').length).toBe(1);
  expect(await dxfOfPattern(cut)).toBe(await dxfOfPattern(cut));
});

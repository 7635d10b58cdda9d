import { describe, expect, test } from 'vitest';
import { ALL, assembled, line, must, SECTION } from '../../../../tests/support/frames.ts';
import { assembleFrame, type FrameModel, frequenciesBelow, vibrateFrame } from './index.ts';

const { youngsModulus: E, shearModulus: G, area: A } = SECTION;
const I = 1e-8;
const L = 0.9;
const RHO = 7850;
const COUNT = 24;
const end = `n${COUNT}`;
/** Bends alike both ways; so thin that rotary inertia of the first modes is below 1e-4. */
const ROUND = { ...SECTION, area: 1e-3, secondMomentY: I, secondMomentZ: I, density: RHO };
const UNIT = Math.sqrt((E * I) / (RHO * 1e-3)) / L ** 2;

const beam = (section: typeof ROUND, supports: FrameModel['supports']) =>
  assembled({ ...line(COUNT, L, section), supports });

const plane = { node: 'n0', fixed: ['ux', 'uy', 'uz', 'rx'] } as const;

/** Roots (k·L)² of uniform beams in bending. */
const BEAMS = [
  { name: 'cantilever', supports: [{ node: 'n0', fixed: ALL }], roots: [3.5160153, 22.0344916, 61.6972144] },
  {
    name: 'hinged',
    supports: [plane, { node: end, fixed: ['uy', 'uz'] as const }],
    roots: [1, 4, 9].map((n) => n * Math.PI ** 2),
  },
  {
    name: 'fixed at both ends',
    supports: [
      { node: 'n0', fixed: ALL },
      { node: end, fixed: ALL },
    ],
    roots: [22.3732854, 61.6728229, 120.9033916],
  },
] as const;

describe('vibrating beams', () => {
  test.each(BEAMS)('[FRAME-19] $name: (kL)²·√(EI/ρA)/L², each twice', ({ supports, roots }) => {
    const frame = beam(ROUND, supports);
    const found = must(vibrateFrame(frame, 6)).map(({ angularFrequency }) => angularFrequency / UNIT);
    roots.forEach((root, i) => {
      // Rotary inertia takes off up to (kL)²·I/(A·L²)·several, 1.2e-5·root²; the mesh adds less.
      for (const value of found.slice(2 * i, 2 * i + 2))
        expect(Math.abs(value / root - 1)).toBeLessThan(1e-3);
    });
  });

  test('[FRAME-19] a thick hinged beam: Timoshenko frequency equation with shear and rotary inertia', () => {
    const As = 5e-4;
    const thick = {
      ...ROUND,
      secondMomentY: 1e-6,
      secondMomentZ: 1e-6,
      torsionConstant: 2e-6,
      shearAreas: [As, As] as const,
    };
    const frame = beam(thick, BEAMS[1].supports);
    const found = must(vibrateFrame(frame, 10)).map(({ angularFrequency }) => angularFrequency);
    [1, 2, 3].forEach((n) => {
      const a = (n * Math.PI) / L;
      const [EI, RA, RI] = [E * 1e-6, RHO * 1e-3, RHO * 1e-6];
      // E·I·a⁴ - ω²·(ρA + ρI·a² + ρA·EI·a²/(G·As)) + ω⁴·ρA·ρI/(G·As) = 0, the lower root.
      const linear = RA + RI * a ** 2 + (RA * EI * a ** 2) / (G * As);
      const square = (RA * RI) / (G * As);
      const wanted = Math.sqrt(
        (2 * EI * a ** 4) / (linear + Math.sqrt(linear ** 2 - 4 * square * EI * a ** 4)),
      );
      const nearest = Math.min(...found.map((value) => Math.abs(value / wanted - 1)));
      // Shear is even within an element: (a·l)²/12 times its share, which is below 0.4, half of it in a root.
      const tolerance = (0.2 * ((a * L) / COUNT) ** 2) / 12;
      expect(nearest).toBeLessThan(tolerance);
      expect(found.filter((value) => Math.abs(value / wanted - 1) < tolerance)).toHaveLength(2);
    });
  });

  test('[FRAME-19] a bar along itself and a shaft in twist: π/2·c/L', () => {
    const stiff = { ...ROUND, secondMomentY: 1e-2, secondMomentZ: 1e-2, torsionConstant: 1e-9 };
    const [twist] = must(vibrateFrame(beam(stiff, [{ node: 'n0', fixed: ALL }]), 1));
    const c = Math.sqrt((G * 1e-9) / (RHO * 2e-2));
    // (π/2/24)²/24 from linear shapes: 1.8e-4.
    expect(Math.abs(twist!.angularFrequency / ((Math.PI / 2) * (c / L)) - 1)).toBeLessThan(2.5e-4);
    const rod = { ...ROUND, secondMomentY: 1, secondMomentZ: 1, torsionConstant: 10 };
    const held = [
      { node: 'n0', fixed: ALL },
      ...Array.from({ length: COUNT }, (_, i) => ({ node: `n${i + 1}`, fixed: ALL.slice(1) })),
    ];
    const [along] = must(vibrateFrame(beam(rod, held), 1));
    expect(Math.abs(along!.angularFrequency / ((Math.PI / 2) * (Math.sqrt(E / RHO) / L)) - 1)).toBeLessThan(
      2.5e-4,
    );
  });

  test('[FRAME-19] a lump on a light cantilever: √(3EI/(m·L³)); on an arm, with its inertia', () => {
    const light: FrameModel = {
      ...line(1, L, { ...SECTION, secondMomentY: I, secondMomentZ: 2 * I }),
      supports: [{ node: 'n0', fixed: ALL }],
      masses: [{ node: 'n1', mass: 4 }],
    };
    const found = must(vibrateFrame(assembled(light), 6)).map(({ angularFrequency }) => angularFrequency);
    const bending = Math.sqrt((3 * E * I) / (4 * L ** 3));
    [bending, bending * Math.SQRT2, Math.sqrt((E * A) / (4 * L))].forEach((wanted, i) => {
      expect(found[i]! / wanted).toBeCloseTo(1, 9);
    });
    // Three movements with mass, and no more.
    expect(found).toHaveLength(3);
    // About the bar's own axis: m·r² + Ixx on G·J/L, the bar held sideways at its end.
    const flag: FrameModel = {
      ...light,
      nodes: { ...light.nodes, flag: { x: L, y: 0, z: 0.2 } },
      supports: [...light.supports, { node: 'n1', fixed: ['ux', 'uy', 'uz', 'ry', 'rz'] }],
      links: [{ leader: 'n1', follower: 'flag' }],
      masses: [{ node: 'flag', mass: 4, inertia: [0.05, 0.3, 0.3, 0.01, 0.02, 0.01] }],
    };
    const [swing] = must(vibrateFrame(assembled(flag), 2));
    const stiffness = (G * SECTION.torsionConstant) / L;
    expect(swing!.angularFrequency / Math.sqrt(stiffness / (4 * 0.04 + 0.05))).toBeCloseTo(1, 9);
  });

  test('[FRAME-19] none is left out: the Sturm count between found frequencies', () => {
    const frame = beam({ ...ROUND, secondMomentZ: 1.7 * I }, [{ node: 'n0', fixed: ALL }]);
    const found = must(vibrateFrame(frame, 12)).map(({ angularFrequency }) => angularFrequency);
    found.slice(1).forEach((value, i) => {
      expect(value).toBeGreaterThan(found[i]!);
      expect(frequenciesBelow(frame, (value + found[i]!) / 2)).toBe(i + 1);
    });
  });

  test('without mass there is nothing to vibrate', () => {
    const outcome = assembleFrame({ ...line(2, L, SECTION), supports: [{ node: 'n0', fixed: ALL }] });
    if (!outcome.ok) throw new Error('refused');
    expect(vibrateFrame(outcome.value, 3)).toMatchObject({ ok: false, issues: [{ code: 'conflict' }] });
  });
});

test('[FRAME-19] twenty equal frequencies: more alike than a quick search can part, none left out', () => {
  const arms = Array.from({ length: 10 }, (_, k) => k);
  const nodes = Object.fromEntries(
    arms.flatMap((k) => [
      [`a${k}`, { x: 0, y: k, z: 0 }],
      [`b${k}`, { x: L, y: k, z: 0 }],
    ]),
  );
  const frame = must(
    assembleFrame({
      nodes,
      members: arms.map((k) => ({ ...ROUND, id: `m${k}`, from: `a${k}`, to: `b${k}` })),
      supports: arms.map((k) => ({ node: `a${k}`, fixed: ALL })),
    }),
  );
  const found = must(vibrateFrame(frame, 8)).map(({ angularFrequency }) => angularFrequency / UNIT);
  expect(found).toHaveLength(8);
  // Ten cantilevers that bend alike both ways; one element is 0.5 % over (kL)² = 3.516.
  for (const value of found) expect(Math.abs(value / 3.5160153 - 1)).toBeLessThan(6e-3);
});

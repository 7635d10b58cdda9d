import { describe, expect, test } from 'vitest';
import { bikeOf, plateBuild } from '../../../tests/support/plateBuild.ts';
import { type Patch, smallBuild } from '../../../tests/support/smallBuild.ts';
import { layOut, placeBike, type StackFlaw, type TubeFlaw, weigh } from '../bike/index.ts';
import type { Build } from '../build/index.ts';
import { solveDriveline } from '../driveline/index.ts';
import type { PlateFlaw } from '../plates/index.ts';
import { degrees, derived, mm } from '../quantity/index.ts';
import { marginBy } from './bound.ts';
import { brakeFindings } from './brakeRules.ts';
import { clearanceFindings } from './clearanceRules.ts';
import { driveFindings } from './driveRules.ts';
import type { Finding } from './finding.ts';
import { ladderFindings } from './ladderRules.ts';
import { plateFindings } from './plateRules.ts';
import { riderFindings } from './riderRules.ts';
import { stackFindings } from './stackRules.ts';
import { steeringFindings } from './steeringRules.ts';
import { tubeFindings } from './tubeRules.ts';

const placed = (build: Build) => {
  const layout = layOut(build);
  const driveline = solveDriveline(build, layout);
  return { build, layout, driveline, bike: placeBike(build, layout, driveline.shafts) };
};
const rules = (findings: readonly Finding[]): readonly string[] =>
  findings.map(({ id }) => id.split(':')[0]!);
const find = (findings: readonly Finding[], rule: string): Finding => {
  const found = findings.find(({ id }) => id.split(':')[0] === rule);
  if (!found) throw new Error(`${rule} is not among ${rules(findings).join(', ')}`);
  return found;
};

describe('margins', () => {
  test.each([
    ['min', 3, 2, 1],
    ['min', 1, 2, -1],
    ['max', 1, 2, 1],
    ['max', 3, 2, -1],
    ['within', -3, 2, -1],
    ['within', -1, 2, 1],
    ['equal', 2, 2, 0],
    ['equal', 5, 2, -3],
  ] as const)('%s: %d against %d leaves %d', (bound, value, limit, margin) => {
    expect(marginBy(bound, { value, limit })).toBe(margin);
  });
});

describe('brakes', () => {
  const drum = { kind: 'drum', side: 'left', diameter: 90, width: 20, reactionArm: true } as const;
  const band = { ...drum, kind: 'band', selfWraps: true } as const;
  const of = (brakes: Patch) => brakeFindings(smallBuild({ brakes }));

  test('two held brakes that wrap themselves on are silent', () => {
    expect(of({ front: drum, rear: band })).toEqual([]);
  });
  test('one brake, none', () => {
    expect(find(of({ front: drum }), 'brakes.two')).toMatchObject({
      value: 1,
      limit: 2,
      margin: -1,
      severity: 'stop',
    });
    expect(find(of({}), 'brakes.two')).toMatchObject({ value: 0, margin: -2 });
  });
  test('a band the wrong way, and nothing that holds it', () => {
    expect(rules(of({ front: drum, rear: { ...band, selfWraps: false } }))).toEqual([
      'brakes.band-direction',
    ]);
    expect(rules(of({ front: drum, rear: { ...band, reactionArm: false } }))).toEqual([
      'brakes.reaction-arm',
    ]);
  });

  // Practice: total caliper piston area to master area 27:1 two-finger, 23:1 firm, under 20:1 wooden; a sliding
  // caliper's single piston counts twice.
  const disc = (pistonDiameter: number, masterBore: number, style = 'sliding', leverRatio = 1) => ({
    front: drum,
    rear: {
      kind: 'disc',
      side: 'right',
      disc: { diameter: 160, thickness: 3 },
      caliper: {
        mountSpacing: 60,
        bolt: 8,
        lugOffset: 10,
        lugRadius: 85,
        clock: 125,
        pistonDiameter,
        pistons: 1,
        style,
      },
      masterBore,
      leverRatio,
    },
  });
  test('area of pistons to master', () => {
    // 2·36²/10² = 25.9; 2·25²/10² = 12.5; 2·45²/10² = 40.5.
    expect(of(disc(36, 10))).toEqual([]);
    const wooden = find(of(disc(25, 10)), 'brakes.area-ratio');
    expect(wooden.value).toBeCloseTo(12.5, 9);
    expect(wooden.margin).toBeCloseTo(-7.5, 9);
    const light = find(of(disc(45, 10)), 'brakes.area-ratio');
    expect(light.margin).toBeCloseTo(-10.5, 9);
    // The same piston opposed counts once: 45²/10² = 20.25.
    expect(of(disc(45, 10, 'opposed'))).toEqual([]);
  });
});

describe('drives', () => {
  const of = (patch: Patch = {}) => {
    const { build, driveline } = placed(smallBuild(patch));
    return driveFindings(build, driveline);
  };
  const slides = { shafts: { rearAxle: { slide: { direction: 180, pusherPitch: 1.25 } } } };

  test('a chain with a slot as long as it needs is only noted', () => {
    expect(of({ driveline: slides }).filter(({ severity }) => severity !== 'note')).toEqual([]);
  });
  test('nothing slides; no pusher; a slot too short', () => {
    expect(rules(of())).toContain('tension.nothing-slides');
    const bare = { driveline: { shafts: { rearAxle: { slide: { direction: 180 } } } } };
    expect(rules(of(bare))).toContain('chain.pusher');
    const short = {
      driveline: { shafts: { rearAxle: { slide: { direction: 180, travel: 1, slack: 0.5 } } } },
    };
    const past = find(of(short), 'tension.outside-travel');
    expect(past.margin).toBeLessThan(0);
    expect(past.remedy).toMatch(/Make the slot travel at least/);
  });
  test('no clutch', () => {
    const stages = [
      {
        id: 'final',
        kind: 'chain',
        from: 'engine',
        to: 'rearAxle',
        chain: '#35',
        driverTeeth: 12,
        drivenTeeth: 72,
      },
    ];
    expect(find(of({ driveline: { ...slides, stages } }), 'driveline.no-clutch').severity).toBe('stop');
  });
  test('sprockets that touch, and a ratio over 7', () => {
    const chain = (drivenTeeth: number, forward: number): Patch => ({
      engine: { place: { forward } },
      driveline: {
        ...slides,
        stages: [
          { id: 'clutch', kind: 'clutch', on: 'engine', engages: 2000 },
          {
            id: 'final',
            kind: 'chain',
            from: 'engine',
            to: 'rearAxle',
            chain: '#35',
            driverTeeth: 10,
            drivenTeeth,
          },
        ],
      },
    });
    expect(find(of(chain(80, 430)), 'chain.ratio').margin).toBeCloseTo(-1, 9);
    expect(rules(of(chain(60, 430)))).not.toContain('chain.ratio');
  });
});

describe('chain lines and tires', () => {
  const of = (patch: Patch = {}) => ladderFindings(placed(smallBuild(patch)).bike);
  test('closed by its spacer: silent', () => {
    expect(of()).toEqual([]);
  });
  test('a spacer made by eye: out of line, with the length that closes it', () => {
    const items = [
      { id: 'clutch', kind: 'clutch', length: 40, planes: [{ runs: 'sprocket', drive: 'final', at: 30 }] },
      { id: 'spacer-shaft', kind: 'spacer', length: 16 },
      { id: 'face', kind: 'face', length: 0, pin: { to: 'engine-face' } },
    ];
    // Closed at 12.5 mm.
    const line = find(of({ stacks: { engine: { items } } }), 'chain-line.offset');
    expect(line.value).toBeCloseTo(0.0035, 9);
    expect(line.margin).toBeCloseTo(-0.0025, 9);
    // Either spacer closes it: the engine's at 12.5, or the one beside the hub at 20 + 3.5.
    expect(line.remedy).toMatch(/spacer-(shaft" of stack "engine" 12|hub" of stack "rearAxle" 23)\.5 mm/);
  });
  test('a tire wider than its room', () => {
    const wide = of({ wheels: { rear: { tire: { width: 150 } } } });
    expect(wide.map(({ id }) => id)).toContain('tire-gap:chain final');
    for (const { margin } of wide) expect(margin).toBeLessThan(0);
  });
});

describe('room between parts', () => {
  const clearance = {
    rule: 'chain-tube',
    parts: ['final', 'rail'],
    limit: 0.005,
    at: { x: 0, y: 0, z: 0 },
  } as const;
  const at = (gap: number) =>
    clearanceFindings([{ ...clearance, gap, within: gap >= 0.005, source: derived('test') }]);
  test('within, near and through', () => {
    expect(at(0.005)).toEqual([]);
    expect(at(0.004)[0]).toMatchObject({ severity: 'caution', what: expect.stringMatching(/^Only 4\.0 mm/) });
    expect(at(-0.006)[0]).toMatchObject({ severity: 'stop', what: expect.stringMatching(/by 6\.0 mm/) });
    expect(at(-0.006)[0]!.margin).toBeCloseTo(-0.011, 12);
  });
});

describe('steering', () => {
  const of = (patch: Patch) => {
    const { build, bike } = placed(smallBuild(patch));
    return steeringFindings(build, bike);
  };
  test('a usual front end with measured tires is silent', () => {
    expect(of({})).toEqual([]);
  });
  test('no trail, little, much; rake out of the usual; pitch; a radius off a marking', () => {
    // Normal trail is 165·sin 26° − offset = 72.3 − offset.
    expect(find(of({ steering: { forkOffset: 80 } }), 'steering.trail')).toMatchObject({ severity: 'stop' });
    expect(find(of({ steering: { forkOffset: 60 } }), 'steering.trail').margin).toBeCloseTo(
      0.165 * Math.sin(degrees(26)) - 0.085,
      9,
    );
    expect(find(of({ steering: { forkOffset: -50 } }), 'steering.trail').margin).toBeLessThan(0);
    expect(find(of({ steering: { headAngle: 75 } }), 'steering.rake').margin).toBeCloseTo(-degrees(3), 9);
    expect(rules(of({ wheels: { front: { fitted: { diameter: 300, width: 90 } } } }))).toContain(
      'steering.pitch',
    );
    const marked = { wheels: { front: { tire: { diameter: null, width: null, size: '4.10/3.50-6' } } } };
    expect(find(of(marked), 'wheels.radius').severity).toBe('note');
  });
});

describe('rider and masses', () => {
  const of = (patch: Patch) => {
    const { build, bike } = placed(smallBuild(patch));
    return riderFindings(build, bike, weigh(build, bike, []));
  };
  test('can be silent', () => {
    const fits = {
      rider: { inseam: 780, stature: 1750 },
      seating: { pegs: { place: { forward: 420, left: 180, height: 220 } } },
    };
    expect(rules(of(fits)).filter((rule) => !rule.startsWith('mass.') && rule !== 'rider.reach')).toEqual([]);
  });
  test('a high seat, low pegs, a grip out of reach, weight to one side', () => {
    expect(find(of({ rider: { inseam: 600 } }), 'rider.standing').margin).toBeCloseTo(0.04 - 0.0762, 9);
    expect(find(of({ seating: { pegs: { place: { height: 60 } } } }), 'rider.peg-height').margin).toBeCloseTo(
      -0.04,
      9,
    );
    expect(rules(of({ steering: { bars: { grip: { forward: 900 } } } }))).toContain('rider.reach');
    expect(find(of({ engine: { place: { side: 150 } } }), 'mass.lateral').margin).toBeLessThan(0);
    expect(
      find(of({ seating: { seat: { place: { forward: -400 } } } }), 'mass.front-share').margin,
    ).toBeLessThan(0);
  });
});

describe('stacks: the margin has the sense of the rule', () => {
  const flaw = (rule: StackFlaw['rule'], value: number, limit: number): Finding =>
    stackFindings([
      {
        stack: 'rear',
        rule,
        items: ['hub'],
        value,
        limit,
        severity: 'stop',
        remedy: 'Do it.',
        source: derived('t'),
      },
    ])[0]!;
  test.each<[StackFlaw['rule'], number, number, number]>([
    ['misfit', -0.003, 0.0001, -0.0029],
    ['negative-spacer', -0.002, 0, -0.002],
    ['bore-under-shaft', 0.015, 0.016, -0.001],
    ['needs-sleeve', 0.012, 0.0101, -0.0019],
    ['axle-too-short', -0.01, 0.003, -0.013],
    ['thread-out', 0.001, 0.003, -0.002],
    ['nut-off-thread', 0.03, 0.025, -0.005],
    ['thread-in-bearing', 0.006, 0.00125, -0.00475],
    ['thin-spacer', 0.0004, 0.001, -0.0006],
    ['hub-width', 0.1, 0.09, -0.01],
    ['rim-off-center', 0.003, 0.001, -0.002],
    ['disc-off-caliper', 0.003, 0.0005, -0.0025],
    ['shaft-too-short', 0.3, 0.29, -0.01],
  ])('%s', (rule, value, limit, margin) => {
    expect(flaw(rule, value, limit).margin).toBeCloseTo(margin, 12);
  });
  test.each<StackFlaw['rule']>(['two-unknowns', 'no-pin', 'unknown-drive', 'circular', 'no-plane'])(
    '%s compares nothing',
    (rule) => {
      const { value, limit, margin } = flaw(rule, 2, 1);
      expect([value, limit, margin]).toEqual([undefined, undefined, undefined]);
    },
  );
});

describe('tubes', () => {
  const withFlaw = (flaw: TubeFlaw): Finding => {
    const { build, bike } = placed(smallBuild());
    return tubeFindings(build, { ...bike, tubes: [], tubeFlaws: [flaw] })[0]!;
  };
  const of = (patch: Patch) => {
    const build = plateBuild({}, patch);
    return tubeFindings(build, bikeOf(build));
  };
  test('a bend radius over the room is over its limit; a straight under the cope is under it', () => {
    const base = { tube: 'rail', reason: 'r' } as const;
    expect(withFlaw({ ...base, rule: 'bends-overlap', value: 0.09, limit: 0.06 }).margin).toBeCloseTo(
      -0.03,
      12,
    );
    expect(withFlaw({ ...base, rule: 'bend-in-cope', value: 0.01, limit: 0.02 }).margin).toBeCloseTo(
      -0.01,
      12,
    );
    expect(withFlaw({ ...base, rule: 'copes-meet' }).margin).toBeUndefined();
  });
  test('stock, die and legs', () => {
    expect(of({})).toEqual([]);
    // The rail is 460 mm long.
    expect(
      find(of({ shop: { tubeStock: [{ tubing: 'rail', length: 400 }] } }), 'tube.longer-than-stock').margin,
    ).toBeCloseTo(-0.06, 9);
    expect(of({ shop: { tubeStock: [{ tubing: 'rail', length: 460 }] } })).toEqual([]);
    const bent = {
      frame: {
        nodes: { 'down-end': { from: 'down-top', forward: 250 } },
        tubes: { down: { through: ['rail-front', 'down-top', 'down-end'], centerlineRadius: 90 } },
      },
    };
    expect(find(of({ ...bent, shop: { bender: { centerlineRadius: 76 } } }), 'tube.die').margin).toBeCloseTo(
      -0.014,
      9,
    );
    expect(of({ ...bent, shop: { bender: { centerlineRadius: 90 } } })).toEqual([]);
    const twice = {
      frame: {
        nodes: { ...bent.frame.nodes, 'down-tip': { from: 'down-end', up: 200 } },
        tubes: {
          down: { through: ['rail-front', 'down-top', 'down-end', 'down-tip'], centerlineRadius: 90 },
        },
      },
    };
    const shop = { bender: { centerlineRadius: 90, shortestLeg: 200 } };
    expect(find(of({ ...twice, shop }), 'tube.short-leg').margin).toBeLessThan(0);
    expect(of({ ...twice, shop: { bender: { centerlineRadius: 90, shortestLeg: 20 } } })).toEqual([]);
  });
});

describe('plates: the margin has the sense of the rule', () => {
  const flaw = (rule: PlateFlaw['rule'], value: number, limit: number): Finding =>
    plateFindings([
      {
        plate: 'p',
        rule,
        features: ['a', 'b'],
        value,
        limit,
        kind: 'length',
        severity: 'stop',
        remedy: 'Do it.',
        source: derived('t'),
      },
    ])[0]!;
  test.each<[PlateFlaw['rule'], number, number]>([
    ['edge-distance', 1, 2],
    ['ligament', 1, 2],
    ['breaks-into-old-hole', 1, 2],
    ['hole-too-small', 1, 2],
    ['hole-too-large', 2, 1],
    ['slot-end', 1, 2],
    ['slot-too-short', 1, 2],
    ['bend-radius', 1, 2],
    ['bend-near-hole', 1, 2],
    ['hole-outside', -1, 0],
    ['does-not-fit-stock', 2, 1],
    ['slot-direction', 2, 1],
    ['pad-overlap', 2, 1],
    ['bore-loose', -1, 0],
    ['bore-tight', 2, 1],
    ['bore-thin-plate', 1, 2],
  ])('%s: %d against %d is short by 1', (rule, value, limit) => {
    expect(flaw(rule, value, limit).margin).toBe(-1);
  });
  test.each<PlateFlaw['rule']>(['cannot-be-drawn', 'outline-crosses-itself', 'slot-unknown', 'no-sheet'])(
    '%s compares nothing',
    (rule) => {
      expect(flaw(rule, 1, 0)).not.toHaveProperty('margin');
    },
  );
  test('fits are said to a thousandth of a millimeter', () => {
    expect(flaw('bore-tight', mm(0.039), mm(0.033)).what).toContain(
      '0.039 mm tighter than its bearing, over 0.033 mm',
    );
    expect(flaw('bore-loose', mm(-0.0205), 0).what).toMatch(/0\.02[01] mm of play/);
  });
});

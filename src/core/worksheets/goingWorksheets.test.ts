import { describe, expect, test } from 'vitest';
import { runWorksheet, worksheetNamed } from './index.ts';

const run = (id: string, json: unknown) => runWorksheet(worksheetNamed(id)!, json);

function resultOf<T = Record<string, unknown>>(id: string, json: unknown): T {
  const outcome = run(id, json);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.issues));
  return outcome.value.result as T;
}

const plain = {
  mass: 130,
  wheelRadius: 200,
  ratio: 9,
  efficiency: 0.9,
  torque: [
    [1800, 11],
    [2500, 12],
    [3600, 10.4],
  ],
  CdA: 0.55,
  rollingCoefficient: 0.018,
  airDensity: 1.2,
  grade: 0,
  rotatingInertia: 0.1,
  speeds: [2, 4, 20],
};

describe('acceleration', () => {
  test('a drag area means the same as m², as text and as mm²', () => {
    const wanted = resultOf('acceleration', plain);
    for (const CdA of ['0.55 m²', '550000 mm²', 550_000]) {
      expect(resultOf('acceleration', { ...plain, CdA })).toEqual(wanted);
    }
    for (const CdA of [50, '50 m²', 'wide', -1]) {
      expect(run('acceleration', { ...plain, CdA }).ok, String(CdA)).toBe(false);
    }
  });

  test('the first torque is held below the first point, and the last point ends the engine', () => {
    const { launchForce, topSpeed, topSpeedLimitedBy, unreached } = resultOf('acceleration', plain);
    expect(launchForce).toBeCloseTo((11 * 9 * 0.9) / 0.2, 9);
    expect(topSpeed).toBeCloseTo((3600 * 2 * Math.PI * 0.2) / 60 / 9, 9);
    expect(topSpeedLimitedBy).toBe('engine-speed');
    expect(unreached).toEqual([20]);
  });

  test('a hill too steep to start on is a result, not an error', () => {
    const answer = resultOf('acceleration', { ...plain, grade: 0.9 });
    expect(answer).toMatchObject({
      topSpeed: 0,
      topSpeedLimitedBy: 'no-launch',
      times: [],
      unreached: [2, 4, 20],
    });
  });

  test('clutch and belt together conflict; a belt that shifts past the governor is said', () => {
    const clutch = { engages: 2000, locks: 2600 };
    const variableBelt = { low: 2.7, high: 0.9, engages: 2200, shiftsAt: 3400 };
    expect(run('acceleration', { ...plain, clutch, variableBelt }).ok).toBe(false);
    expect(run('acceleration', { ...plain, variableBelt: { ...variableBelt, shiftsAt: 4000 } }).ok).toBe(
      false,
    );
    const { switches } = resultOf<{ switches: { phase: string }[] }>('acceleration', {
      ...plain,
      ratio: 4,
      variableBelt,
    });
    expect(switches.map((one) => one.phase)).toEqual(['bite', 'low', 'shift', 'high']);
  });
});

test('acceleration by an electric motor, and the energy of a ride', () => {
  const { torque: _, ...bike } = plain;
  const motor = {
    constant: 0.12,
    resistance: 0.05,
    motorCurrent: 150,
    batteryCurrent: 80,
    voltage: 48,
    batteryResistance: 0.04,
    energy: 500,
    ride: [{ speed: '20 km/h', distance: 3000 }],
  };
  const answer = resultOf('acceleration', { ...bike, motor }) as unknown as {
    launchForce: number;
    ride: { energy: number; distance: number; range: number };
  };
  expect(answer.launchForce).toBeCloseTo((0.12 * 150 * 9 * 0.9) / 0.2, 9);
  expect(answer.ride.range).toBeCloseTo((500 / answer.ride.energy) * 3000, 6);
  expect(run('acceleration', { ...plain, motor }).ok).toBe(false);
  expect(run('acceleration', bike).ok).toBe(false);
});

describe('clutch', () => {
  const given = { engages: 2000, locks: 2600, ratio: 6, rollout: 1036, torque: plain.torque, governed: 3600 };
  test('story of the trade: lock-up 27, governor 37 km/h, slipping at 20 km/h, locked at 8:1', () => {
    const use = {
      mass: 129,
      grade: '15 %',
      rollingCoefficient: 0.03,
      efficiency: 0.96 ** 2,
      speed: '20 km/h',
      drumMass: 0.5,
    };
    const six = resultOf('clutch', { ...given, ...use }) as unknown as {
      lockUpSpeed: number;
      governedSpeed: number;
      torqueForGrade: number;
      level: { slipping: boolean };
      launch: { heat: number; drumRise: number; starts: boolean };
    };
    expect(Math.abs(six.lockUpSpeed * 3.6 - 27)).toBeLessThan(0.5);
    expect(Math.abs(six.governedSpeed * 3.6 - 37)).toBeLessThan(0.5);
    expect(Math.abs(six.torqueForGrade - 6.7)).toBeLessThan(0.05);
    expect(six.level.slipping).toBe(true);
    expect(six.launch.starts).toBe(true);
    expect(six.launch.drumRise).toBeCloseTo(six.launch.heat / (0.5 * 460), 9);
    const eight = resultOf('clutch', { ...given, ...use, ratio: 8 }) as unknown as {
      level: { slipping: boolean };
    };
    expect(eight.level.slipping).toBe(false);
  });

  test.each([
    ['neither rollout nor radius', { rollout: undefined }],
    ['both', { wheelRadius: 165 }],
    ['locks below the bite', { locks: 1900 }],
    ['nothing that tells the capacity', { torque: undefined }],
  ])('%s is an issue', (_name, change) => {
    expect(run('clutch', { ...given, ...change }).ok).toBe(false);
  });
});

test('gearing: a pair that no chain in the slots fits has no links; an unknown chain is an issue', () => {
  const base = {
    driverTeeth: [12],
    drivenTeeth: [72],
    mass: 129,
    wheelRadius: 165,
    torque: plain.torque,
    chain: '#35',
    centers: { shortest: 376, longest: 377, now: 376.5 },
  };
  const { rows } = resultOf<{ rows: object[] }>('gearing', base);
  expect(rows[0]).not.toHaveProperty('links');
  expect(run('gearing', { ...base, chain: '#37' }).ok).toBe(false);
});

test('variable-belt: upside-down limits are an issue', () => {
  const sheaves = { driver: { smallest: 70, largest: 150 }, driven: { smallest: 190, largest: 110 } };
  expect(run('variable-belt', { beltLength: 913, ...sheaves }).ok).toBe(false);
});

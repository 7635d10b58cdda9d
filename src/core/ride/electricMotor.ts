import { bad, good, type Issue, type Outcome } from '../quantity/index.ts';
import type { TorquePoint } from './engine.ts';
import { type RoadLoad, roadForces } from './roadLoad.ts';

/** A direct-current motor, or a brushless one with its controller seen from the battery side. */
export interface ElectricMotor {
  /** K, torque a current and voltage a speed, one number in SI [N·m/A = V·s/rad]. */
  readonly constant: number;
  /** Winding resistance [Ω]. */
  readonly resistance: number;
  /** Friction, iron and fan at speed, taken as a constant torque [N·m]; left out: 0. */
  readonly drag?: number;
  /** Controller's limit of the motor current [A]. */
  readonly motorCurrent: number;
  /** Controller's limit of the battery current [A]. */
  readonly batteryCurrent: number;
  readonly battery: Battery;
}

export interface Battery {
  /** Open-circuit voltage [V]. */
  readonly voltage: number;
  /** Internal resistance with cables [Ω]; left out: 0. */
  readonly resistance?: number;
  /** Energy that may be used [J]. */
  readonly energy?: number;
}

/** Which limit rules. */
export type MotorLimit = 'motor-current' | 'battery-current' | 'voltage';

export interface MotorPoint extends TorquePoint {
  readonly limit: MotorLimit;
  /** [A] */
  readonly motorCurrent: number;
  readonly batteryCurrent: number;
}

/** A stretch of a ride at steady speed. */
export interface RideStretch {
  /** [m/s], > 0. */
  readonly speed: number;
  /** [m] */
  readonly distance: number;
  /** Left out: level. */
  readonly grade?: number;
}

export interface RideEnergy {
  /** Drawn from the battery [J]. */
  readonly energy: number;
  /** [m] */
  readonly distance: number;
  /** How far the battery's usable energy goes on such rides [m]; absent when it is not given. */
  readonly range?: number;
}

/**
 * Greatest torque at a speed: T = K·I − drag with the least of three currents: the motor limit; the voltage limit
 * (V − K·ω)/(R + R_b) at full voltage; and the battery limit, from K·ω·I + R·I² = (V − R_b·I_b)·I_b.
 * @param speed ω [rad/s], ≥ 0
 * @source derived, Kirchhoff's law of motor and battery, controller without loss
 */
export function motorPoint(motor: ElectricMotor, speed: number): MotorPoint {
  const { constant: k, resistance: r, battery, drag = 0 } = motor;
  const own = battery.resistance ?? 0;
  const back = k * speed;
  const supply = (battery.voltage - own * motor.batteryCurrent) * motor.batteryCurrent;
  const currents: readonly (readonly [MotorLimit, number])[] = [
    ['motor-current', motor.motorCurrent],
    ['battery-current', powerCurrent(r, back, supply)],
    ['voltage', Math.max(0, (battery.voltage - back) / (r + own))],
  ];
  const [limit, current] = currents.reduce((least, one) => (one[1] < least[1] ? one : least));
  return {
    speed,
    torque: Math.max(0, k * current - drag),
    limit,
    motorCurrent: current,
    batteryCurrent: batteryCurrentFor(motor, (back + r * current) * current) ?? motor.batteryCurrent,
  };
}

/**
 * Torque points over the whole speed range, closer where a limit gives way to another.
 * @param count points on each of the three branches, ≥ 2
 * @issue out-of-range — a constant, resistance, current or voltage that is not above 0
 * @source derived
 */
export function motorPoints(motor: ElectricMotor, count: number = 24): Outcome<readonly MotorPoint[]> {
  const [first, ...rest] = motorIssues(motor);
  if (first) return bad(first, ...rest);
  const { constant: k, drag = 0, battery, resistance: r } = motor;
  const own = battery.resistance ?? 0;
  // Where the voltage leaves only the current that the drag takes.
  const free = Math.max(0, (battery.voltage - (drag / k) * (r + own)) / k);
  const steps = 3 * count;
  const speeds = Array.from({ length: steps + 1 }, (_, i) => (free * i) / steps);
  const switches = limitSwitches(motor, speeds);
  return good([...speeds, ...switches].sort((a, b) => a - b).map((speed) => motorPoint(motor, speed)));
}

/**
 * Battery energy of a ride of steady stretches, and the range on such rides. The motor gives F·v/η; its battery gives
 * that and the losses of winding, drag and its own resistance. Downhill nothing is taken back.
 * @param drive engine turns per wheel turn, efficiency and rolling radius [m]
 * @issue conflict — a stretch asks more than the controller or battery allow
 * @source derived
 */
export function rideEnergy(
  motor: ElectricMotor,
  drive: { readonly ratio: number; readonly efficiency: number; readonly wheelRadius: number },
  road: RoadLoad,
  ride: readonly RideStretch[],
): Outcome<RideEnergy> {
  let [energy, distance] = [0, 0];
  for (const [index, stretch] of ride.entries()) {
    const forces = roadForces({ ...road, grade: stretch.grade ?? 0 });
    const force = Math.max(0, forces.rolling + forces.climb + forces.air * stretch.speed ** 2);
    const speed = (stretch.speed * drive.ratio) / drive.wheelRadius;
    const torque = (force * drive.wheelRadius) / (drive.ratio * drive.efficiency);
    const current = batteryCurrentOf(motor, torque, speed);
    if (current === undefined || torque > motorPoint(motor, speed).torque * (1 + 1e-12)) {
      const reason = `${stretch.speed.toFixed(1)} m/s on this grade asks more than motor, controller and battery give`;
      return bad({ code: 'conflict', path: `ride[${index}]`, reason });
    }
    energy += (motor.battery.voltage * current * stretch.distance) / stretch.speed;
    distance += stretch.distance;
  }
  const usable = motor.battery.energy;
  const range = usable === undefined || energy === 0 ? {} : { range: (usable / energy) * distance };
  return good({ energy, distance, ...range });
}

function batteryCurrentOf(motor: ElectricMotor, torque: number, speed: number): number | undefined {
  const current = (torque + (torque > 0 ? (motor.drag ?? 0) : 0)) / motor.constant;
  return batteryCurrentFor(motor, (motor.constant * speed + motor.resistance * current) * current);
}

/** Current at which the battery gives a power: (V − R_b·I)·I = P, the smaller root; undefined past its peak. */
function batteryCurrentFor(motor: ElectricMotor, power: number): number | undefined {
  const { voltage, resistance = 0 } = motor.battery;
  if (resistance === 0) return power / voltage;
  const inside = voltage ** 2 - 4 * resistance * power;
  return inside < 0 ? undefined : (2 * power) / (voltage + Math.sqrt(inside));
}

/** Motor current that takes a power: R·I² + E·I = P. */
function powerCurrent(resistance: number, back: number, power: number): number {
  return (2 * power) / (back + Math.sqrt(back ** 2 + 4 * resistance * power));
}

/** Speeds between two samples at which one limit gives way to another, by bisection. */
function limitSwitches(motor: ElectricMotor, speeds: readonly number[]): number[] {
  const switches: number[] = [];
  for (let k = 1; k < speeds.length; k++) {
    let [low, high] = [speeds[k - 1]!, speeds[k]!];
    const before = motorPoint(motor, low).limit;
    if (motorPoint(motor, high).limit === before) continue;
    for (let round = 0; round < 60; round++) {
      const middle = (low + high) / 2;
      if (middle <= low || middle >= high) break;
      if (motorPoint(motor, middle).limit === before) low = middle;
      else high = middle;
    }
    if (low > speeds[k - 1]! && low < speeds[k]!) switches.push(low);
  }
  return switches;
}

function motorIssues(motor: ElectricMotor): readonly Issue[] {
  const { constant, resistance, motorCurrent, batteryCurrent, battery, drag = 0 } = motor;
  const issues = Object.entries({
    constant,
    resistance,
    motorCurrent,
    batteryCurrent,
    voltage: battery.voltage,
  })
    .filter(([, given]) => !(given > 0))
    .map(([path, given]): Issue => ({ code: 'out-of-range', path, given, above: 0, unit: '' }));
  if (!(drag >= 0)) issues.push({ code: 'out-of-range', path: 'drag', given: drag, min: 0, unit: 'N·m' });
  const spent = (battery.resistance ?? 0) * batteryCurrent;
  if (!(spent < battery.voltage)) {
    const reason = 'the battery limit alone takes the whole voltage inside the battery';
    issues.push({ code: 'conflict', path: 'batteryCurrent', reason });
  }
  return issues;
}

import { type Block, type DraftSheet, flowPages, type Paper } from '../drawings/index.ts';
import { printQuantity, type QuantityKind, type UnitSystem } from '../quantity/index.ts';
import { cautions } from './cautions.ts';
import type { PackInput } from './packInput.ts';

/** A length asked for to this or finer must fit: its inches are decimal where they are no fraction [mm]. */
const FITS = 0.05;

/** Prints values the way this pack's reader asked for. */
export const printer =
  (units: UnitSystem) =>
  (value: number, kind: QuantityKind, resolution?: number): string =>
    printQuantity(
      value,
      kind,
      units,
      resolution === undefined ? {} : { resolution, fine: resolution <= FITS },
    );

/** Title, what it is, and the cautions: the first page anyone sees. */
export function titlePage(input: PackInput, paper: Paper): readonly DraftSheet[] {
  const { about } = input.build;
  const counts = (severity: string) => input.findings.filter((one) => one.severity === severity).length;
  const blocks: Block[] = [
    { kind: 'heading', text: about.name, level: 1 },
    ...(about.summary ? [{ kind: 'paragraph' as const, text: about.summary, size: 3.4 }] : []),
    ...(about.invented
      ? [{ kind: 'paragraph' as const, text: 'This build is invented, for show.', weight: 'bold' as const }]
      : []),
    { kind: 'space', height: 3 },
    {
      kind: 'paragraph',
      text: `Shop pack of ${input.date}. Findings: ${counts('stop')} that stop the work, ${counts('caution')} cautions, ${counts('note')} notes; see the last pages before cutting anything.`,
      weight: 'bold',
    },
    { kind: 'space', height: 3 },
    { kind: 'heading', text: 'Read this first', level: 2 },
    { kind: 'list', marker: 'bullet', items: cautions, size: 3 },
  ];
  return flowPages({ id: 'book-title', title: 'Shop pack', paper, blocks });
}

/** The bike in numbers: what a reader asks first. */
export function specificationPages(input: PackInput, paper: Paper): readonly DraftSheet[] {
  const { bike, masses, driveline, build } = input;
  const print = printer(input.units);
  const { design, fitted, sag } = bike.layout.stances;
  const rows: (readonly [string, string])[] = [
    ['Wheelbase', print(design.wheelbase, 'length')],
    ['Head angle / rake', `${print(design.headAngle, 'angle')} / ${print(design.rake, 'angle')}`],
    ['Trail on the ground', print(design.trail, 'length')],
    ['Normal trail', print(design.normalTrail, 'length')],
    ['Fork offset', print(build.steering.forkOffset, 'length')],
    ...(Math.abs(sag.pitch) > 1e-6 || sag.trail !== design.trail
      ? [
          [
            'With sag: head angle / trail',
            `${print(sag.headAngle, 'angle')} / ${print(sag.trail, 'length')}`,
          ] as const,
        ]
      : []),
    ...(build.wheels.front.fitted || build.wheels.rear.fitted
      ? [
          [
            'With the tires now fitted: head angle / trail',
            `${print(fitted.headAngle, 'angle')} / ${print(fitted.trail, 'length')}`,
          ] as const,
        ]
      : []),
    [
      'Rear tire radius, width',
      `${print(bike.layout.rearTire.radius, 'length')}, ${print(bike.layout.rearTire.width, 'length')} (by ${bike.layout.rearTire.by})`,
    ],
    [
      'Front tire radius, width',
      `${print(bike.layout.frontTire.radius, 'length')}, ${print(bike.layout.frontTire.width, 'length')} (by ${bike.layout.frontTire.by})`,
    ],
    ['Seat height', print(bike.layout.places.seat.z, 'length')],
    ['Mass without / with rider', `${print(masses.bare, 'mass')} / ${print(masses.total, 'mass')}`],
    [
      'Center of mass with rider',
      `${print(masses.center.x, 'length')} ahead of the rear axle, ${print(masses.center.z, 'length')} high`,
    ],
    [
      'Wheel loads front / rear',
      `${print(masses.frontLoad, 'force', 1)} / ${print(masses.rearLoad, 'force', 1)}`,
    ],
    ['Engine', build.engine.class],
    [
      'Engine turns a wheel turn',
      driveline.ratio.low === driveline.ratio.high
        ? driveline.ratio.low.toFixed(2)
        : `${driveline.ratio.low.toFixed(2)} at launch to ${driveline.ratio.high.toFixed(2)}`,
    ],
  ];
  const blocks: Block[] = [
    { kind: 'heading', text: 'Specification', level: 1 },
    { kind: 'table', columns: [{ title: 'What' }, { title: 'Value' }], rows, size: 3 },
    { kind: 'space', height: 4 },
    { kind: 'heading', text: 'Drives', level: 2 },
    driveTable(input),
    { kind: 'space', height: 4 },
    { kind: 'heading', text: 'Setting the drives together', level: 2 },
    { kind: 'list', marker: 'number', items: tensionItems(input), size: 3 },
  ];
  return flowPages({ id: 'book-specification', title: 'Specification', paper, blocks });
}

function driveTable(input: PackInput): Block {
  const print = printer(input.units);
  const rows = [
    ...Object.values(input.driveline.belts).map((belt) => [
      belt.stage.id,
      `belt ${print(belt.stage.beltLength, 'length')}`,
      `${belt.low.ratio.toFixed(2)} to ${belt.high.ratio.toFixed(2)}`,
      '–',
      print(belt.center, 'length', 0.01),
      belt.tension.slides ?? '–',
      belt.tension.slotNeeded ? print(belt.tension.slotNeeded.total, 'length') : '–',
      '–',
    ]),
    ...Object.values(input.driveline.chains).map((chain) => [
      chain.stage.id,
      `${chain.chain.name}, ${chain.stage.driverTeeth}/${chain.stage.drivenTeeth}`,
      (chain.stage.drivenTeeth / chain.stage.driverTeeth).toFixed(2),
      chain.plan ? `${chain.plan.chosen.links}` : 'none',
      print(chain.center, 'length', 0.01),
      chain.tension.slides ?? '–',
      chain.tension.slotNeeded ? print(chain.tension.slotNeeded.total, 'length') : '–',
      chain.plan ? print(chain.plan.slack.play, 'length', 1) : '–',
    ]),
  ];
  const titles = [
    'Drive',
    'Chain or belt',
    'Ratio',
    'Links',
    'Center distance',
    'Slides',
    'Slot travel',
    'Play to set',
  ];
  return { kind: 'table', columns: titles.map((title) => ({ title })), rows };
}

/** The two nearest counts of each chain, and what each wants. */
function tensionItems(input: PackInput): string[] {
  const print = printer(input.units);
  return (input.driveline.tension?.drives ?? []).map((drive) => {
    const options = drive.alternatives
      .filter((choice) => choice.links !== undefined)
      .map((choice) => `${choice.links} links want ${print(choice.center, 'length', 0.01)}`);
    const slack = drive.slack
      ? ` Half an inch of play is only ${print(drive.slack.centerChangeOfHalfInch, 'length', 0.01)} of center distance: use pushers, not a bare slot.`
      : '';
    return `${drive.id}: slide ${drive.slides ?? 'nothing'}.${options.length > 0 ? ` ${options.join('; ')}.` : ''}${slack}`;
  });
}

/**
 * Which room may import which: the table of docs/architecture.md as data. The flow of the program is one way,
 * from a build file to a pack, and a room that looked back up would make two rooms out of one.
 */
export interface RoomRule {
  readonly room: string;
  /** Other rooms it may import, always through their `index.ts`. */
  readonly mayImport: readonly string[];
  /** Why it ends there; printed with each breach. */
  readonly why: string;
}

const FOUNDATION = ['quantity', 'numerics', 'geometry', 'standards', 'build'] as const;

export const ROOM_RULES: readonly RoomRule[] = [
  {
    room: 'quantity',
    mayImport: [],
    why: 'Units are below everything; anything they knew would be known everywhere.',
  },
  { room: 'numerics', mayImport: [], why: 'Solvers are plain mathematics and carry no unit of ours.' },
  {
    room: 'geometry',
    mayImport: ['quantity', 'numerics'],
    why: 'Shapes know lengths and solvers, not parts or standards.',
  },
  { room: 'standards', mayImport: ['quantity'], why: 'A table is facts with a source; it computes nothing.' },
  {
    room: 'build',
    mayImport: ['quantity', 'standards'],
    why: 'The file says what was typed; where it ends up in space is worked out later.',
  },
  {
    room: 'bike',
    mayImport: FOUNDATION,
    why: 'Placing a part must not depend on whether it holds or rides.',
  },
  {
    room: 'driveline',
    mayImport: [...FOUNDATION, 'bike'],
    why: 'Drives are solved on the placed bike, before loads are known.',
  },
  {
    room: 'plates',
    mayImport: [...FOUNDATION, 'bike', 'driveline'],
    why: 'A plate follows from the parts it carries and the take-up its drives need; nothing is placed by it.',
  },
  {
    room: 'strength',
    mayImport: [...FOUNDATION, 'bike', 'driveline', 'plates'],
    why: 'Strength takes loads from the placed bike and its drives; it does not ride.',
  },
  {
    room: 'ride',
    mayImport: [...FOUNDATION, 'bike', 'driveline'],
    why: 'How it rides does not depend on how strong it is; neither may hide in the other.',
  },
  {
    room: 'fit',
    mayImport: [...FOUNDATION, 'bike', 'driveline', 'plates'],
    why: 'Whether it goes together is geometry alone, not strength or ride.',
  },
  {
    room: 'findings',
    mayImport: [...FOUNDATION, 'bike', 'driveline', 'plates', 'strength', 'ride', 'fit'],
    why: 'Verdicts come last: they read every figure and feed none back.',
  },
  {
    room: 'shop',
    mayImport: [...FOUNDATION, 'bike', 'driveline', 'plates', 'fit', 'findings'],
    why: 'How a part is made follows from the solved bike; it solves nothing itself.',
  },
  {
    room: 'drawings',
    mayImport: [
      'quantity',
      'geometry',
      'build',
      'plates',
      'bike',
      'driveline',
      'strength',
      'ride',
      'findings',
      'shop',
    ],
    why: 'A drawing shows what is known, drives, ride and strength among it; a formula here would be a second truth.',
  },
  {
    room: 'pack',
    mayImport: [
      ...FOUNDATION,
      'bike',
      'driveline',
      'plates',
      'strength',
      'ride',
      'fit',
      'findings',
      'shop',
      'drawings',
    ],
    why: 'The pack gathers what every room gives; nothing is worked out in it.',
  },
  {
    room: 'worksheets',
    mayImport: [
      'quantity',
      'numerics',
      'geometry',
      'standards',
      'build',
      'plates',
      'bike',
      'driveline',
      'strength',
      'ride',
      'fit',
      'shop',
    ],
    why: 'A worksheet exposes one calculation; a few also take a whole build file, none a verdict or a drawing.',
  },
];

/** Libraries of the screen: the core must run where there is none. */
export const SCREEN_LIBRARIES: readonly string[] = [
  'react',
  'react-dom',
  'react-aria-components',
  'three',
  'comlink',
  'zustand',
  'zundo',
];

import { z } from 'zod';

/** [y, z] or [x, y] of one kind of quantity, made from the fields of its parts. */
export const pair = <T extends z.ZodType>(doc: string, first: T, second: T) =>
  z.tuple([first, second]).meta({ description: doc });

/** [x, y, z] of one kind of quantity. */
export const triple = <T extends z.ZodType>(doc: string, first: T, second: T, third: T) =>
  z.tuple([first, second, third]).meta({ description: doc });

/** One of a few words. */
export const oneOf = <T extends string>(doc: string, words: readonly T[]) =>
  z.enum(words as readonly [T, ...T[]]).meta({ description: doc });

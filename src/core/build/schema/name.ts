import { z } from 'zod';

/** A name within the file: starts with a letter; letters, digits and hyphens. `.` is kept for mirrored parts (`stay.right`). */
export const nameField = (doc: string) =>
  z
    .string()
    .min(1)
    .max(48)
    .regex(/^[A-Za-z][A-Za-z0-9-]*$/, 'a name: a letter, then letters, digits or hyphens')
    .meta({ description: doc });

/** A name used elsewhere in the file; `name.right` is the mirror image of a node or tube. */
export const referenceField = (doc: string) =>
  z
    .string()
    .min(1)
    .max(56)
    .regex(/^[A-Za-z][A-Za-z0-9-]*(\.right)?$/, 'a name from this file, with `.right` for the mirror image')
    .meta({ description: doc });

/** Free text of a sensible size. Control characters would break names of files, tables and the title block. */
export const textField = (doc: string, max = 400) =>
  z
    .string()
    .max(max)
    .regex(/^\P{Cc}*$/u, 'text without control characters or line breaks')
    .meta({ description: doc });

/** A table keyed by name. Names, not positions, so that a variant can patch one entry. */
export const namedTable = <T extends z.ZodType>(entry: T, doc: string) =>
  z
    .record(nameField('name'), entry)
    .refine((table) => Object.keys(table).length <= 400, 'at most 400 entries')
    .meta({ description: doc });

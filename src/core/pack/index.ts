export { bookSheets } from './book.ts';
export { cautions, notChecked } from './cautions.ts';
export { modelParts } from './model.ts';
export { bookFiles, type PackedFile, type PackOptions, packFiles, shopFiles } from './packFiles.ts';
export type { PackInput } from './packInput.ts';
export { reportJson } from './report.ts';
export { printerVerdict, templateBook } from './templates.ts';

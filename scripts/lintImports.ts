import { fileURLToPath } from 'node:url';
import { lintImports, sourceFiles } from './lint/imports.ts';

const root = fileURLToPath(new URL('..', import.meta.url));
const files = sourceFiles(root, 'src');
const breaches = lintImports(files);
for (const breach of breaches) {
  console.error(`${breach.file}:${breach.line}  ${breach.rule}: ${breach.what}\n    ${breach.why}`);
}
console.log(`import directions: ${files.length} files, ${breaches.length} breaches`);
// A check that read nothing has proven nothing.
if (files.length === 0 || breaches.length > 0) process.exitCode = 1;

import { type PackFile, writePack } from '../../src/cli/writePack.ts';

/** A pack that is never finished: says so after its first files, so that the test can kill it in the middle. */
async function* endless(): AsyncGenerator<PackFile> {
  for (let i = 0; ; i++) {
    yield { path: `page-${i}.txt`, bytes: new TextEncoder().encode('x'.repeat(10_000)) };
    if (i === 5) process.stdout.write('writing\n');
    await new Promise((resolve) => setTimeout(resolve, 5));
  }
}

const [folder] = process.argv.slice(2);
if (folder === undefined) throw new Error('usage: endlessPack FOLDER');
await writePack(folder, endless());

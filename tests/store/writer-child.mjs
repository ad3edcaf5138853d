/** A process that adds records until it is killed, or so many: `writer-child.mjs MODULE STORE NAME [COUNT]`. Says each that is safely there. */
const [module = '', root = '', name = '', count = '1000000'] = process.argv.slice(2);
const { writing } = await import(module);
process.stdout.write('ready\n');
for (let i = 0; i < Number(count); i++) {
  const record = `- {id: ${name}-${i}, name: fitting, note: ${'n'.repeat(200)}}\n`;
  await writing(root, (writer) => writer.update('shells/T-1/components.yaml', (old) => (old ?? '') + record));
  process.stdout.write(`${name}-${i}\n`);
}

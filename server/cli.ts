import { runCommand } from './command-line.ts';

// a reader that has seen enough, such as `| head`, is no fault
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
  process.exit(0);
});

process.exitCode = await runCommand(process.argv.slice(2), {
  out: (text) => void process.stdout.write(`${text}\n`),
  say: (text) => void process.stderr.write(`${text}\n`),
});

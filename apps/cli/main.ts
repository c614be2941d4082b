import { Command, CommanderError } from 'commander';
import { addAir } from './commands/air';
import { addDemo } from './commands/demo';
import { addDraw } from './commands/draw';
import { addPlan } from './commands/plan';
import { addServe } from './commands/serve';
import { addVerify } from './commands/verify';
import { addWater } from './commands/water';
import { addWorksheet } from './commands/worksheet';
import { EXIT, Stop } from './outcome';

const program = new Command('seamward').description('Keeps recreational vehicles watertight, sound and safe on the road.').version('0.1.0').showHelpAfterError().exitOverride();

for (const add of [addServe, addPlan, addWater, addVerify, addDraw, addWorksheet, addAir, addDemo]) add(program);

/** A reader that closed the pipe early (`| head`) has had what it wanted. */
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit(EXIT.ok);
  throw error;
});

try {
  await program.parseAsync(process.argv);
} catch (error) {
  if (error instanceof CommanderError) process.exitCode = error.exitCode === 0 ? EXIT.ok : EXIT.refused;
  else if (error instanceof Stop) {
    process.stderr.write(`seamward: ${error.message}\n`);
    process.exitCode = error.status;
  } else {
    process.stderr.write(`seamward: a fault in the program itself: ${error instanceof Error ? error.message : String(error)}\n`);
    process.exitCode = EXIT.failed;
  }
}

import { Command, CommanderError, Option } from 'commander';
import { version } from '../../../package.json';
import { faultMessage } from './fault.ts';
import { Refusal, reasonOf } from './refusal.ts';
import { allowLinks } from './roots.ts';
import { terminal } from './terminal.ts';
import { verbs } from './verbs.ts';

const help = `
First steps:
  layback new our-boat               a folder to start from, with a plan that checks clean
  layback check                      every .spread file in this folder and below
  layback check plans/friday.spread  one plan
  layback draw plans/friday.spread   the picture, beside the plan
  layback explain stagger            what a rule means

It ends with 0 when all is well, 1 when something was found, 2 when it could not do its job.
The skipper, local law and your event's rules come first: a clean check promises nothing.`;

/** Runs the command; how it ended is in `process.exitCode`. */
export async function run(args: readonly string[]): Promise<void> {
    process.on('uncaughtException', (error) => end(error, args));
    process.on('unhandledRejection', (error) => end(error, args));
    process.stdout.on('error', (error: NodeJS.ErrnoException) =>
        end(
            error.code === 'ENOSPC' ? new Refusal(`What was to be printed ${reasonOf(error)}.`) : error,
            args,
        ),
    );
    try {
        const program = await programFor(args);
        await program.parseAsync(args, { from: 'user' });
    } catch (error) {
        end(error, args);
    }
}

async function programFor(args: readonly string[]): Promise<Command> {
    const program = new Command('layback')
        .description('Check a trolling spread before leaving the dock, draw it, brief the crew.')
        .version(version, '-V, --version', 'print the version')
        .helpOption('-h, --help', 'say how a command is used')
        .helpCommand('help [command]', 'say how a command is used')
        .addHelpText('after', help)
        .showHelpAfterError('(layback --help says what there is.)')
        .configureHelp({ showGlobalOptions: false })
        .exitOverride();
    for (const { name, summary, hidden = false, load } of verbs) {
        const command = program
            .command(name, { hidden })
            .summary(summary)
            .helpOption('-h, --help', 'say how it is used');
        command
            .copyInheritedSettings(program)
            .showHelpAfterError(`(layback ${name} --help says how it is used.)`);
        if (args.includes(name)) (await load()).declare(command);
        if (!readsPlans.has(name)) continue;
        command.addOption(linkedPackages(name === 'check'));
        command.hook('preAction', () => command.opts().linkedPackages && allowLinks());
    }
    return program;
}

/** Whatever reads what a plan uses. */
const readsPlans = new Set(['check', 'figures', 'draw', 'card', 'brief', 'compare', 'season']);

function linkedPackages(isShown: boolean): Option {
    const says = 'also read packages that are linked from outside the folder';
    return new Option('--linked-packages', says).hideHelp(!isShown);
}

function end(error: unknown, args: readonly string[]): void {
    if (error instanceof CommanderError) {
        process.exitCode = error.exitCode === 0 ? 0 : 2;
    } else if (error instanceof Refusal) {
        terminal.log(`layback: ${error.message}`);
        process.exitCode = 2;
    } else if ((error as NodeJS.ErrnoException | undefined)?.code === 'EPIPE') {
        // Whoever reads has seen enough (`| head`): nothing is wrong, and nobody is left to tell.
        process.exit(process.exitCode ?? 0);
    } else {
        terminal.log(faultMessage(error, version, args));
        process.exit(2);
    }
}

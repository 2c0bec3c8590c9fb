import { writeFileSync } from 'node:fs';
import { arch, platform, tmpdir } from 'node:os';
import { join } from 'node:path';

/**
 * What to say when the command itself is at fault: no stack on the screen, which tells a crew nothing, but
 * what whoever mends it needs, in a file of its own.
 *
 * @returns lines for the log
 */
export function faultMessage(error: unknown, version: string, args: readonly string[]): string {
    const about = [
        `layback ${version}, Node ${process.version}, ${platform()} ${arch()}`,
        `layback ${args.join(' ')}`,
        error instanceof Error ? `${error.name}: ${firstLine(error.message)}` : firstLine(String(error)),
    ];
    const kept = keepDetails([...about, error instanceof Error ? (error.stack ?? '') : ''].join('\n'));
    return [
        'layback stopped at a fault of its own; your plan is not to blame, and was not changed.',
        'Please report it with these lines, and with the plan if you may share it:',
        ...about.map((line) => `  ${line}`),
        ...(kept === undefined ? [] : [`  and the details kept in ${kept}`]),
    ].join('\n');
}

function firstLine(text: string): string {
    return (text.split(/\r?\n/, 1)[0] ?? '').slice(0, 300);
}

function keepDetails(text: string): string | undefined {
    const path = join(tmpdir(), `layback-fault-${process.pid}.txt`);
    try {
        writeFileSync(path, `${text}\n`, { flag: 'wx', mode: 0o600 });
        return path;
    } catch {
        return undefined;
    }
}

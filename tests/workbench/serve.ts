import path from 'node:path';
import { parseArgs } from 'node:util';
import { type Theme, themes } from './page.ts';
import { layback, project } from './project.ts';
import { startServer } from './server.ts';

const usage = `Opens VS Code in the browser with this project's extension on a folder, by default examples/.
Saves go to that folder.

  npm run workbench -- [folder] [--port N] [--theme ${Object.keys(themes).join('|')}] [--restricted] [--installed]
`;

try {
    const { values, positionals } = parseArgs({
        allowPositionals: true,
        options: {
            port: { type: 'string', default: '0' },
            theme: { type: 'string', default: 'light' },
            restricted: { type: 'boolean', default: false },
            installed: { type: 'boolean', default: false },
            help: { type: 'boolean', short: 'h', default: false },
        },
    });
    if (values.help) {
        process.stdout.write(usage);
        process.exit();
    }
    const [workspace = path.join(project, 'examples'), ...more] = positionals;
    const port = /^\d+$/.test(values.port) ? Number(values.port) : Number.NaN;
    if (more.length > 0) throw new Error('One folder is opened at a time.');
    if (!(port < 65_536)) throw new Error(`"${values.port}" is not a port.`);
    if (!Object.hasOwn(themes, values.theme)) throw new Error(`"${values.theme}" is not a theme.`);

    const server = await startServer({
        workspace: path.resolve(workspace),
        extension: layback,
        project,
        port,
        theme: values.theme as Theme,
        trusted: !values.restricted,
        installed: values.installed,
    });
    process.stdout.write(`${server.address}\nOpen it in Chrome, Edge or Firefox. Ctrl+C ends it.\n`);
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => void server.close());
} catch (error) {
    process.stderr.write(`${(error as Error).message}\n\n${usage}`);
    process.exitCode = 2;
}

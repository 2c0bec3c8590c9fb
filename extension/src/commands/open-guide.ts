import { Uri } from 'vscode';
import { type Home, running } from '../commands.ts';
import { openPage } from './explain-rule.ts';

/** Opens a document that comes with the extension: the one named, else the guide from one plan to a season. */
export async function openGuide(home: Home, ...[name]: unknown[]): Promise<void> {
    if (!(await running(home))) return;
    const page = typeof name === 'string' && /^[\w-]+$/.test(name) ? name : 'guide';
    await openPage(Uri.parse(`layback:/docs/${page}.md`));
}

import { commands, env, ProgressLocation, type QuickPickItem, Uri, window, workspace } from 'vscode';
import { type Card, type CardWanted, card, type PlanWanted } from '../../../language/src/editor/protocol.ts';
import type { Server } from '../server.ts';

type Paper = CardWanted['paper'];
type Form = CardWanted['form'];

const papers: Readonly<Record<Paper, string>> = {
    a4: 'A4',
    letter: 'Letter',
    half: 'half of A4, for laminating',
};

interface Choice extends QuickPickItem {
    readonly form: Form;
    readonly paper: Paper;
}

/**
 * Writes the deck card of a plan to a file, as its text stands, saved or not: asks what for, then where to.
 *
 * @param wanted  what may be meant; the first of it that there is, is printed
 */
export async function saveCard(server: Server, wanted: readonly PlanWanted[]): Promise<void> {
    if (!(await server.started())) {
        void window.showWarningMessage(
            'The Layback language server is not running: it makes the card. “Layback: Restart Language Server” starts it.',
        );
        return;
    }
    if (wanted.length === 0) {
        void window.showInformationMessage('Put the caret into a spread: its card is made.');
        return;
    }
    const choice = await window.showQuickPick(choices(), {
        title: 'Save the Deck Card',
        placeHolder: 'What the card is for',
    });
    if (!choice) return;
    const made = await printed(server, wanted, choice);
    if (made === 'left') return;
    if (!made) {
        void window.showInformationMessage('There is no spread in this file.');
        return;
    }
    const target = await window.showSaveDialog({
        title: `Save the card of ${made.plan.title}`,
        defaultUri: beside(Uri.parse(made.uri, true), made.plan.name, choice.form),
        filters: { [filters[choice.form]]: [choice.form] },
    });
    if (!target) return;
    const bytes = Uint8Array.from(atob(made.content), (character) => character.charCodeAt(0));
    try {
        await workspace.fs.writeFile(target, bytes);
    } catch (fault) {
        void window.showErrorMessage(
            `${workspace.asRelativePath(target)} could not be written: ${(fault as Error).message}`,
        );
        return;
    }
    await tell(target, made, choice.form);
}

const filters: Readonly<Record<Form, string>> = {
    pdf: 'PDF to print',
    html: 'Page for a telephone',
    svg: 'SVG drawing',
    png: 'PNG image',
};

/** The paper of the settings first, so that Enter prints as always. */
function choices(): Choice[] {
    const said = workspace.getConfiguration('layback').get<string>('card.paper', 'a4');
    const usual: Paper = said in papers ? (said as Paper) : 'a4';
    const others = (Object.keys(papers) as Paper[]).filter((paper) => paper !== usual);
    const pdf = (paper: Paper): Choice => ({
        label: `PDF on ${papers[paper]}`,
        ...(paper === usual && { description: 'to print' }),
        form: 'pdf',
        paper,
    });
    return [
        pdf(usual),
        {
            label: 'Page for a telephone',
            description: 'one HTML file that needs no network',
            form: 'html',
            paper: usual,
        },
        ...others.map(pdf),
        { label: 'SVG', description: 'for drawing programs', form: 'svg', paper: usual },
        { label: 'PNG', description: 'a picture to send', form: 'png', paper: usual },
    ];
}

/** @returns `left` where whoever asked did not wait for it */
async function printed(
    server: Server,
    wanted: readonly PlanWanted[],
    { form, paper }: Choice,
): Promise<Card | undefined | 'left'> {
    const location = ProgressLocation.Notification;
    const title = 'Making the deck card';
    return window.withProgress({ location, title, cancellable: true }, async (_, token) => {
        for (const { uri, plan, position } of wanted) {
            const asked = { uri, ...(plan !== undefined && { plan }), ...(position && { position }) };
            const made = await server.ask(card, { ...asked, form, paper }, token);
            if (token.isCancellationRequested) return 'left';
            if (made) return made;
        }
        return undefined;
    });
}

async function tell(target: Uri, { curtailed, errors }: Card, form: Form): Promise<void> {
    const letters =
        ' Print has no face for some of its letters: they are counted; the page for a telephone has them.';
    const wrote = `Wrote ${workspace.asRelativePath(target)}.${curtailed ? letters : ''}`;
    // An editor shows no PDF, and a page as its markup: both are for the program that the machine has for them.
    const isOutside = target.scheme === 'file' && (form === 'pdf' || form === 'html');
    const openIt = form === 'pdf' && !isOutside ? [] : ['Open It'];
    const what = errors === 1 ? 'an error' : `${errors} errors`;
    const chosen =
        errors === 0
            ? await window.showInformationMessage(wrote, ...openIt)
            : await window.showWarningMessage(
                  `${wrote} The text has ${what}: what is wrong there is wrong on the card.`,
                  ...openIt,
              );
    if (!chosen) return;
    if (isOutside) await env.openExternal(target);
    else await commands.executeCommand('vscode.open', target);
}

/** Named as the command line names it, after the plan. */
function beside(file: Uri, plan: string, form: Form): Uri {
    const name = `${plan}-card.${form}`;
    return file.scheme === 'untitled' ? Uri.file(name) : Uri.joinPath(file, '..', name);
}

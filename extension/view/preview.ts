import {
    type FromPage,
    type ShowPicture,
    type ShowTrial,
    type ShowWords,
    toPage,
} from '../src/diagram/messages.ts';
import { readDrawing } from './drawing.ts';
import { handOn } from './hand.ts';
import { fromKept, type Kept } from './kept.ts';
import { followRoom } from './room.ts';
import { stageIn } from './stage.ts';
import { button, tableOf } from './table.ts';
import { tellTrial } from './trial.ts';
import { walkIn } from './walk.ts';

declare function acquireVsCodeApi(): {
    postMessage(message: FromPage): void;
    getState(): unknown;
    setState(state: Kept): void;
};

const editor = acquireVsCodeApi();
const part = <E extends HTMLElement>(id: string) => document.getElementById(id) as E;
const [host, table, words, banner] = ['stage', 'table', 'words', 'banner'].map((id) => part(id)) as [
    HTMLElement,
    HTMLElement,
    HTMLElement,
    HTMLElement,
];

let kept = fromKept(editor.getState());
let shown: ShowPicture | undefined;
let marked: readonly string[] = [];

const reveal = (id: string) => editor.postMessage({ kind: 'reveal', id });
/** A picture that arrived while a lure is in the hand waits until it is let go. */
let waiting: ShowPicture | undefined;
/** The drawing that is up, of the text or of a trial. */
let up: string | undefined;
const trial = part('trial');
const hand = handOn(host, {
    tried: ({ position, astern }) => editor.postMessage({ kind: 'try', position, astern }),
    put: ({ position, astern }) => {
        trial.hidden = true;
        editor.postMessage({ kind: 'move', position, astern });
    },
    left: () => {
        editor.postMessage({ kind: 'leave' });
        putBack();
    },
});
// After the hand: what moves a lure does not move the paper.
const stage = stageIn(host, kept.sight, keep);
const walk = walkIn(host, reveal);

function keep(): void {
    const { sight } = stage;
    kept = {
        ...(shown && { shown: shown.shown, picture: shown }),
        ...(sight && { sight }),
        asTable: document.body.classList.contains('as-table'),
    };
    editor.setState(kept);
}

function showPicture(message: ShowPicture): void {
    const before = shown;
    tell(message.outdated);
    words.replaceChildren();
    host.setAttribute('aria-busy', 'false');
    const isSame = before?.shown.plan === message.shown.plan && before.shown.view === message.shown.view;
    if (before && isSame && message.partial) return;
    if (hand.held && isSame && message.version === before.version) {
        waiting = message;
        return;
    }
    hand.letGo();
    waiting = undefined;
    trial.hidden = true;
    if (up !== message.svg && !putUp(message, message.places, isSame)) return;
    shown = message;
    part('caution').textContent = message.bare ? message.summary.caution : '';
    document.body.classList.add('filled');
    host.setAttribute('aria-label', `Diagram of ${message.summary.title}`);
    check();
    mark(marked);
    keep();
}

/** @returns false for what is no drawing */
function putUp(
    { svg, summary, moves }: Pick<ShowPicture, 'svg' | 'summary' | 'moves'>,
    places: readonly string[],
    isSame: boolean,
): boolean {
    const drawing = readDrawing(svg);
    if (!drawing) return false;
    const focused = (document.activeElement as HTMLElement | null)?.dataset.id;
    const known = new Set(places);
    stage.show(drawing, isSame);
    host.style.backgroundColor = drawing.paper;
    walk.enter(drawing.svg, known);
    hand.over(drawing, moves);
    if (focused !== undefined) {
        host.querySelector<SVGElement>(`[data-id="${CSS.escape(focused)}"]`)?.focus({ preventScroll: true });
    }
    table.replaceChildren(tableOf(summary, known, reveal));
    up = svg;
    return true;
}

function showTrial(message: ShowTrial): void {
    const { held } = hand;
    if (!held || held.position !== message.position || !shown) return;
    if (up !== message.svg) putUp(message, shown.places, true);
    tellTrial(trial, message, held.by);
    mark(marked);
}

/** The picture of the text again, where a lure was tried elsewhere. */
function putBack(): void {
    trial.hidden = true;
    const picture = waiting ?? shown;
    if (picture) showPicture(picture);
}

/** Whoever types breaks a text with every other word: only what stays broken for so long, ms, is worth a banner. */
const patience = 600;
let telling: ReturnType<typeof setTimeout> | undefined;

/** The banner over a picture that is not the text as it stands. */
function tell(outdated: string | undefined): void {
    clearTimeout(telling);
    const put = () => {
        banner.hidden = outdated === undefined;
        banner.textContent = outdated === undefined ? '' : `Not the text as it stands. ${outdated}`;
        document.body.classList.toggle('outdated', outdated !== undefined);
    };
    if (outdated !== undefined && banner.hidden) telling = setTimeout(put, patience);
    else put();
}

function showWords(message: ShowWords): void {
    host.setAttribute('aria-busy', String(message.state === 'loading'));
    // A picture that is there is worth more than the news that another one is on its way.
    if (message.state === 'loading' && shown) return;
    if (message.state === 'empty') {
        shown = up = undefined;
        hand.letGo();
        trial.hidden = true;
        host.replaceChildren();
        table.replaceChildren();
        part('caution').replaceChildren();
        document.body.classList.remove('filled');
        tell(undefined);
        keep();
    }
    const said = document.createElement('p');
    said.textContent = message.words;
    const pressed = message.offers.map((offer) =>
        button(offer, () => editor.postMessage({ kind: 'offer', offer })),
    );
    words.replaceChildren(said, ...pressed);
    words.dataset.state = message.state;
}

function mark(ids: readonly string[]): void {
    const isOther = ids.join() !== marked.join();
    marked = ids;
    const wanted = new Set(ids);
    for (const each of host.querySelectorAll<SVGElement>('g[data-id]')) {
        const isMarked = wanted.has(each.dataset.id ?? '');
        each.classList.toggle('marked', isMarked);
        if (each.dataset.role === 'lure' || each.dataset.role === 'standby')
            each.toggleAttribute('aria-current', isMarked);
    }
    const positions = new Set(
        [...host.querySelectorAll<SVGElement>('.marked')].map((e) => e.dataset.position),
    );
    for (const row of table.querySelectorAll<HTMLElement>('tr[data-position]')) {
        row.classList.toggle('marked', positions.has(row.dataset.position));
    }
    ring(isOther);
    walk.prefer(ids.find((id) => id.startsWith('lure:') || id.startsWith('standby:')));
}

/** Draws a box around a marked lure and its label: a colour alone would not do for everybody. */
function ring(isNew: boolean): void {
    for (const old of host.querySelectorAll('.ring')) old.remove();
    for (const each of host.querySelectorAll<SVGGElement>('g.marked')) {
        if (!['lure', 'standby', 'note'].includes(each.dataset.role ?? '')) continue;
        const { x, y, width, height } = each.getBBox();
        const room = 12;
        const box = document.createElementNS('http://www.w3.org/2000/svg', 'rect');
        box.classList.add('ring', ...(isNew ? ['new'] : []));
        box.setAttribute('x', String(x - room));
        box.setAttribute('y', String(y - room));
        box.setAttribute('width', String(width + 2 * room));
        box.setAttribute('height', String(height + 2 * room));
        box.setAttribute('rx', '10');
        each.after(box);
    }
}

const choices = ['above', 'side', 'table'] as const;
type Choice = (typeof choices)[number];

function chosen(): Choice {
    if (document.body.classList.contains('as-table')) return 'table';
    return shown?.shown.view ?? kept.shown?.view ?? 'above';
}

function check(): void {
    for (const choice of choices) {
        const radio = part(`show-${choice}`);
        const isChosen = choice === chosen();
        radio.setAttribute('aria-checked', String(isChosen));
        radio.tabIndex = isChosen ? 0 : -1;
    }
    // Beside the drawing the table is only heard, and the drawing has the same places to go to.
    for (const each of table.querySelectorAll('button')) each.tabIndex = chosen() === 'table' ? 0 : -1;
}

function choose(choice: Choice): void {
    document.body.classList.toggle('as-table', choice === 'table');
    if (choice !== 'table' && shown?.shown.view !== choice)
        editor.postMessage({ kind: 'view', view: choice });
    check();
    keep();
    part(`show-${choice}`).focus();
}

for (const [index, choice] of choices.entries()) {
    const radio = part(`show-${choice}`);
    radio.addEventListener('click', () => choose(choice));
    radio.addEventListener('keydown', (event) => {
        const by = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key];
        if (by === undefined) return;
        event.preventDefault();
        choose(choices[(index + by + choices.length) % choices.length]!);
    });
}

const step = 1.25;
part('zoom-in').addEventListener('click', () => stage.zoomBy(step));
part('zoom-out').addEventListener('click', () => stage.zoomBy(1 / step));
part('zoom-fit').addEventListener('click', () => stage.fitAll());
document.addEventListener('keydown', (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const far = 60;
    const ways: Readonly<Record<string, () => void>> = {
        '+': () => stage.zoomBy(step),
        '=': () => stage.zoomBy(step),
        '-': () => stage.zoomBy(1 / step),
        '0': () => stage.fitAll(),
        ...(event.shiftKey && {
            ArrowLeft: () => stage.panBy({ x: far, y: 0 }),
            ArrowRight: () => stage.panBy({ x: -far, y: 0 }),
            ArrowUp: () => stage.panBy({ x: 0, y: far }),
            ArrowDown: () => stage.panBy({ x: 0, y: -far }),
        }),
    };
    const go = ways[event.key];
    if (!go || document.body.classList.contains('as-table')) return;
    event.preventDefault();
    go();
});

window.addEventListener('message', ({ data }: MessageEvent<unknown>) => {
    const message = toPage(data);
    if (message?.kind === 'picture') showPicture(message);
    if (message?.kind === 'words') showWords(message);
    if (message?.kind === 'mark') mark(message.ids);
    if (message?.kind === 'trial') showTrial(message);
    if (message?.kind === 'unmoved') {
        putBack();
        banner.textContent = message.words;
        banner.hidden = false;
    }
});

document.body.classList.toggle('as-table', kept.asTable === true);
if (kept.picture) {
    // What was there before the reload, until the server has read everything again.
    const { outdated = 'The text is being read again.', ...picture } = kept.picture;
    showPicture({ ...picture, outdated });
}
check();
followRoom((room) => editor.postMessage({ kind: 'room', ...room }));
editor.postMessage({ kind: 'ready' });

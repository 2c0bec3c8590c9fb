import {
    type FromPage,
    type Shown,
    type ShowPicture,
    type ShowTrial,
    type ShowWords,
    toPage,
} from '../src/diagram/messages.ts';
import type { ShowStrike, ShowTurn } from '../src/diagram/scene-messages.ts';
import { type View, viewNames } from '../src/diagram/views.ts';
import { type Drawing, readDrawing } from './drawing.ts';
import { button, element } from './element.ts';
import { handOn } from './hand.ts';
import { fromKept, type Kept } from './kept.ts';
import { playerIn } from './player.ts';
import { ringMarked } from './ring.ts';
import { followRoom } from './room.ts';
import { stageIn } from './stage.ts';
import { showStrike } from './strike.ts';
import { switchIn } from './switch.ts';
import { tableOf } from './table.ts';
import { tellTrial } from './trial.ts';
import { walkIn } from './walk.ts';
import { wordsOfComparison, wordsOfStrike, wordsOfTurn } from './words.ts';

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
/** What is on show, whichever way it is drawn. */
let now: Shown | undefined;

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
const choices = part('choices');
const hosts = { stage: host, choices, player: part('player') };
const player = playerIn(hosts, (turn) => editor.postMessage({ kind: 'choose', choice: { turn } }), kept.time);

function keep(): void {
    const { sight } = stage;
    kept = {
        ...(now && { shown: now }),
        ...(shown && { picture: shown }),
        ...(now?.view === 'turn' && { time: player.time }),
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
    standFor(message.shown, message.summary.title, message.bare ? message.summary.caution : '');
    compareWith(message.compared);
}

/** A turn or a bite, which the page draws by itself. */
function showScene(message: ShowTurn | ShowStrike): void {
    const isSame = now?.plan === message.shown.plan && now.view === message.shown.view;
    tell(message.outdated);
    words.replaceChildren();
    host.setAttribute('aria-busy', 'false');
    hand.letGo();
    trial.hidden = true;
    shown = waiting = up = undefined;
    document.body.classList.add('filled');
    if (message.kind === 'strike') player.leave();
    const drawing =
        message.kind === 'turn'
            ? player.show(message)
            : showStrike(hosts, message, (strike) =>
                  editor.postMessage({ kind: 'choose', choice: { strike } }),
              );
    if (!drawing) return;
    show(drawing, message.places, isSame);
    table.replaceChildren(
        message.kind === 'turn' ? wordsOfTurn(message.scene) : wordsOfStrike(message.scene),
    );
    const { title } = message.scene;
    standFor(message.shown, title.title, title.caution);
}

/** What is said of whatever is on show. */
function standFor(what: Shown, title: string, caution: string): void {
    now = what;
    if (what.view !== 'turn') player.leave();
    if (what.view !== 'turn' && what.view !== 'strike') choices.hidden = true;
    part('caution').textContent = caution;
    document.body.classList.add('filled');
    host.setAttribute('aria-label', `${viewNames[what.view]}: ${title}`);
    check();
    mark(marked);
    keep();
    toldRoom();
}

/** What changed, beside the picture and before its table. */
function compareWith(compared: ShowPicture['compared']): void {
    if (!compared) return;
    const list = element('ul');
    list.append(...compared.told.map((each) => element('li', each)));
    const heading = element('p', `Against ${compared.before} (${compared.from}), in broken lines.`);
    const changes = compared.told.length > 0 ? list : element('p', 'Nothing has changed.');
    choices.setAttribute('aria-label', 'What is compared');
    choices.replaceChildren(
        heading,
        changes,
        ...(['Compare with Another Plan…', 'Compare with the Last Commit'] as const).map(offered),
    );
    choices.hidden = false;
    table.querySelector('h1')?.after(...wordsOfComparison(compared));
}

function offered(offer: ShowWords['offers'][number]): HTMLButtonElement {
    const made = button(offer, () => editor.postMessage({ kind: 'offer', offer }));
    made.className = 'offer';
    return made;
}

/** @returns false for what is no drawing */
function putUp(
    { svg, summary, moves }: Pick<ShowPicture, 'svg' | 'summary' | 'moves'>,
    places: readonly string[],
    isSame: boolean,
): boolean {
    const drawing = readDrawing(svg);
    if (!drawing) return false;
    show(drawing, places, isSame, moves);
    table.replaceChildren(tableOf(summary, new Set(places), reveal));
    up = svg;
    return true;
}

/** Puts a drawing on the stage; whoever stood at a part of the one before stands there again. */
function show(
    drawing: Drawing,
    places: readonly string[],
    isSame: boolean,
    moves: ShowPicture['moves'] = [],
): void {
    const focused = (document.activeElement as HTMLElement | null)?.dataset.id;
    stage.show(drawing, isSame);
    host.style.backgroundColor = drawing.paper;
    walk.enter(drawing.svg, new Set(places));
    hand.over(drawing, moves);
    if (focused !== undefined) {
        host.querySelector<SVGElement>(`[data-id="${CSS.escape(focused)}"]`)?.focus({ preventScroll: true });
    }
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
    if (message.state === 'loading' && now) return;
    // What a view wants to know first leaves the other views within reach, and the focus where it is.
    document.body.classList.toggle('choosing', message.state === 'choose');
    if (message.state === 'empty' || message.state === 'choose') {
        shown = up = now = undefined;
        hand.letGo();
        player.leave();
        trial.hidden = choices.hidden = true;
        host.replaceChildren();
        table.replaceChildren();
        part('caution').replaceChildren();
        document.body.classList.remove('filled');
        tell(undefined);
        now = message.shown;
        check();
        keep();
    }
    const heading =
        message.state === 'choose' ? [element('h1', viewNames[message.shown?.view ?? 'compare'])] : [];
    words.replaceChildren(...heading, element('p', message.words), ...message.offers.map(offered));
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
    ringMarked(host, isOther);
    walk.prefer(ids.find((id) => id.startsWith('lure:') || id.startsWith('standby:')));
}

const views = switchIn(
    (view: View) => {
        if (now?.view !== view) editor.postMessage({ kind: 'view', view });
    },
    (on) => {
        document.body.classList.toggle('as-table', on);
        check();
        keep();
    },
);

function check(): void {
    views.check(now?.view ?? kept.shown?.view ?? 'above');
    // Beside the drawing the table is only heard, and the drawing has the same places to go to.
    const isTable = document.body.classList.contains('as-table');
    for (const each of table.querySelectorAll('button')) each.tabIndex = isTable ? 0 : -1;
}

/** A key that goes into a field is none of the picture's. */
function isTyped(target: EventTarget | null): boolean {
    return target instanceof Element && target.matches('input, select');
}

const step = 1.25;
part('zoom-in').addEventListener('click', () => stage.zoomBy(step));
part('zoom-out').addEventListener('click', () => stage.zoomBy(1 / step));
part('zoom-fit').addEventListener('click', () => stage.fitAll());
document.addEventListener('keydown', (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey || isTyped(event.target)) return;
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
    if (message?.kind === 'turn' || message?.kind === 'strike') showScene(message);
    if (message?.kind === 'words') showWords(message);
    if (message?.kind === 'mark') mark(message.ids);
    if (message?.kind === 'trial') showTrial(message);
    if (message?.kind === 'unmoved') {
        putBack();
        banner.textContent = message.words;
        banner.hidden = false;
    }
});

// Before anything is shown, which may take some of the room.
const toldRoom = followRoom((room) => editor.postMessage({ kind: 'room', ...room }));
document.body.classList.toggle('as-table', kept.asTable === true);
part('as-table').setAttribute('aria-pressed', String(kept.asTable === true));
if (kept.picture) {
    // What was there before the reload, until the server has read everything again.
    const { outdated = 'The text is being read again.', ...picture } = kept.picture;
    showPicture({ ...picture, outdated });
}
check();
editor.postMessage({ kind: 'ready' });

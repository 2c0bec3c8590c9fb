import { strikeWords } from '../../language/src/drawing/scene-strike.ts';
import type { StrikeScene, TurnScene } from '../../language/src/editor/protocol.ts';
import type { ShowPicture } from '../src/diagram/messages.ts';
import { element } from './element.ts';
import { seconds } from './player.ts';
import { listed } from './table.ts';
import { distanceAt } from './turn-water.ts';

/*
 * What the views that are no plain drawing show, as tables and sentences.
 */

export function wordsOfTurn(scene: TurnScene): DocumentFragment {
    const { clean, nearest, times } = scene;
    const fragment = document.createDocumentFragment();
    const end = times.at(-1) ?? 0;
    const samples = Array.from({ length: 13 }, (_, index) => (end * index) / 12);
    fragment.append(
        element('h1', `${scene.title.title}, in a turn`),
        element('p', scene.heading),
        ...listed(
            'Tightest clean turns',
            [clean.port, clean.starboard].flatMap(({ words, limit }) => [
                `${words}.`,
                ...(limit ? [limit] : []),
            ]),
        ),
        table(
            'What happens when',
            ['After', 'What', 'Grave'],
            scene.moments.map(({ time, words, grave }) => [seconds(time), words, grave ? 'yes' : 'no']),
        ),
        table(
            'Lures through the turn',
            ['Position', 'Slowest'],
            scene.lines.map(({ title, name }) => [title, name]),
        ),
        ...(nearest
            ? [
                  table(
                      `Metres between ${nearest.positions.join(' and ')}`,
                      ['After', 'Metres', 'Touching'],
                      samples.map((time) => {
                          const apart = distanceAt(scene, time)!;
                          return [seconds(time), apart.toFixed(1), apart <= nearest.contact ? 'yes' : 'no'];
                      }),
                  ),
              ]
            : []),
        ...notesOf(scene),
    );
    return fragment;
}

export function wordsOfStrike(scene: StrikeScene): DocumentFragment {
    const fragment = document.createDocumentFragment();
    const { strike, spool } = scene;
    const every = 20;
    const [title, heading, ...said] = strikeWords(scene);
    fragment.append(
        element('h1', title ?? ''),
        element('p', heading ?? ''),
        ...listed('What happens, and what it is read against', said),
        ...(strike
            ? [
                  table(
                      'Through the first seconds',
                      ['After the bite', 'At the hook, N', 'Drag at the reel, N', 'Run off, m'],
                      strike.time.flatMap((time, index) =>
                          index % every === 0
                              ? [
                                    [
                                        seconds(time),
                                        strike.hook[index]!.toFixed(0),
                                        strike.drag[index]!.toFixed(0),
                                        strike.lineOff[index]!.toFixed(1),
                                    ],
                                ]
                              : [],
                      ),
                  ),
              ]
            : []),
        ...(spool
            ? [
                  table(
                      'Drag as the spool empties, N',
                      ['Line off, m', ...spool.curves.map(({ stage }) => stage)],
                      (spool.curves[0]?.off ?? []).flatMap((off, index) =>
                          index % 4 === 0
                              ? [
                                    [
                                        off.toFixed(0),
                                        ...spool.curves.map(({ force }) => force[index]!.toFixed(0)),
                                    ],
                                ]
                              : [],
                      ),
                  ),
              ]
            : []),
    );
    fragment.append(element('p', scene.title.caution));
    return fragment;
}

/** What changed, before the later plan's own table. */
export function wordsOfComparison({
    before,
    from,
    told,
}: NonNullable<ShowPicture['compared']>): HTMLElement[] {
    return [
        element('h2', `Against ${before}`),
        element('p', `From ${from}.`),
        ...(told.length > 0 ? listed('Changes', told) : [element('p', 'Nothing has changed.')]),
    ];
}

function notesOf({ marks, remarks, unknown, title }: TurnScene): HTMLElement[] {
    return [
        ...listed(
            'Findings',
            marks.map(({ number, severity, message }) => `${severity} ${number}: ${message}`),
        ),
        ...listed('Not known', unknown),
        ...listed('Notes', [...remarks, title.caution]),
    ];
}

function table(
    caption: string,
    columns: readonly string[],
    rows: readonly (readonly string[])[],
): HTMLElement {
    const made = element('table');
    const head = element('tr');
    for (const column of columns) {
        const cell = element('th', column);
        cell.scope = 'col';
        head.append(cell);
    }
    const top = element('thead');
    top.append(head);
    const body = element('tbody');
    for (const cells of rows) {
        const row = element('tr');
        for (const [index, text] of cells.entries()) {
            const cell = element(index === 0 ? 'th' : 'td', text);
            if (index === 0) cell.setAttribute('scope', 'row');
            row.append(cell);
        }
        body.append(row);
    }
    made.append(element('caption', caption), top, body);
    return made;
}

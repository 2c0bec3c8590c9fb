import { capital, listed } from '../../plan/wording.ts';
import type { CardContents } from './contents.ts';
import type { ClearingOnCard } from './handling.ts';
import type { CardRow } from './rows.ts';
import { closed } from './team.ts';
import { estimateMark, inWords } from './told.ts';
import type { SideOnCard, TurnLimitOnCard } from './turns.ts';

/** What is cleared after a strike at a position, first to last. */
export type ClearingRow = ClearingOnCard['after'][number];

/** A part of a card in words, whatever it is printed on. */
export interface Section {
    /** Plain and short: an anchor, a bookmark's name in code. */
    readonly id: string;
    readonly title: string;
    readonly items: readonly Item[];
}

export interface Item {
    /** What the item is about, set off from its words. */
    readonly lead?: string;
    readonly words: string;
    /** One of a numbered row; its number. */
    readonly number?: number;
}

/** Where the fish is when the running line meets another: said once, not at every distance. */
const asideTold = 'Fish so far to a side: where it has gone when the running line meets the other.';

export const clearingTitle = 'Clearing after a strike';

/**
 * Everything below the table, in the order of use; a part that the plan says nothing for is not there.
 *
 * @param tabled  what is cleared after a strike stands in a table of its own
 */
export function sectionsOf(card: CardContents, tabled = false): Section[] {
    const sections: Section[] = [
        ...(tabled
            ? [{ id: 'clearing-order', title: 'The team’s order of clearing', items: statedClearing(card) }]
            : [{ id: 'clearing', title: clearingTitle, items: clearingItems(card) }]),
        ...card.drills.map(
            ({ title, steps }, index): Section => ({
                id: `drill-${index + 1}`,
                title,
                items: sentences(steps),
            }),
        ),
        { id: 'turns', title: 'Turns', items: turnItems(card) },
        { id: 'speed', title: 'Speed', items: sentences(card.speeds) },
        { id: 'times', title: 'Times and weather', items: card.times.map(asItem) },
        { id: 'findings', title: 'Open findings', items: findingItems(card) },
        { id: 'waivers', title: 'Accepted by the team', items: waiverItems(card) },
        { id: 'setting', title: 'Setting, first to last', items: settingItems(card) },
        ...card.days,
        {
            id: 'roles',
            title: 'Roles',
            items: card.roles.map(({ role, name }) => ({ lead: role, words: name })),
        },
        { id: 'fallbacks', title: 'If something is out', items: fallbackItems(card) },
        { id: 'event', title: 'Limits to keep', items: sentences(card.event) },
        { id: 'notes', title: 'Notes', items: sentences(card.notes.map(sentence)) },
        { id: 'figures', title: 'What the figures stand on', items: figureItems(card, tabled) },
        { id: 'cautions', title: 'Cautions', items: sentences(card.cautions) },
    ];
    return sections.filter(({ items }) => items.length > 0);
}

function asItem({ caption, value }: { caption: string; value: string }): Item {
    return { lead: caption, words: value };
}

function sentences(all: readonly string[]): Item[] {
    return all.map((words) => ({ words }));
}

function turnItems({ turns }: CardContents): Item[] {
    const { asked, sides } = turns;
    const known: Item[] = [
        ...(asked ? [{ lead: 'Planned', words: `no tighter than ${inWords(asked)}.` }] : []),
        ...sides.map((side) => ({ lead: `To ${side.side}`, words: turnWords(side) })),
    ];
    return sides.length > 0 ? known : [...known, ...sentences(turns.remarks)];
}

function turnWords({ clean, never, working, neverWorking, unknown }: SideOnCard): string {
    if (!clean) return `no turn that was looked at is clean${never ? `: ${never}` : ''}.`;
    const every = unknown.length > 0 ? 'every lure of a known least speed' : 'every lure';
    const works = working && ` ${capital(every)} works down to ${limitWords(working)}.`;
    const stops = neverWorking && ` No turn that was looked at keeps ${every} working: ${neverWorking}.`;
    const open = unknown.length > 0 ? ` Not known whether ${listed(unknown)} still works.` : '';
    return `clean down to ${limitWords(clean)}.${works ?? stops ?? ''}${open}`;
}

function limitWords({ radius, halfTurn, limit }: TurnLimitOnCard): string {
    return [inWords(radius), halfTurn && `half a turn in ${halfTurn}`, limit && `tighter, ${limit}`]
        .filter(Boolean)
        .join('; ');
}

function settingItems({ setting, steps }: CardContents): Item[] {
    const stepsFor = new Map(steps.lines.map((each) => [each.position, each.steps]));
    const ordered = setting.order.map(({ position, reason }, index): Item => {
        const words = [...(reason ? [reason] : []), ...(stepsFor.get(position) ?? [])];
        return { number: index + 1, lead: capital(position), words: words.map(sentence).join(' ') };
    });
    const others = steps.lines.flatMap(({ number, position, steps }): Item[] =>
        number === undefined ? [{ lead: capital(position), words: steps.map(sentence).join(' ') }] : [],
    );
    const why = setting.stated && {
        lead: 'The team’s order',
        words: setting.stated.because ? sentence(setting.stated.because) : 'No reason given.',
    };
    return [
        ...(why ? [why] : []),
        ...steps.all.map((words): Item => ({ lead: 'Every line', words: closed(words) })),
        ...ordered,
        ...others,
        ...sentences(setting.remarks),
    ];
}

function clearingItems(card: CardContents): Item[] {
    const { stated, after, remarks } = card.clearing;
    return [
        ...statedClearing(card),
        ...clearingRows(card).map(
            ({ hooked, order }): Item => ({
                lead: `Fish on ${hooked}`,
                words: `${grouped(order).join('; ')}.`,
            }),
        ),
        ...sentences(after.length > 0 ? asideOf(card) : stated ? [] : remarks),
    ];
}

function asideOf({ clearing }: CardContents): string[] {
    return clearing.after.some(({ order }) => order.some(({ reason }) => reason.startsWith('fish ')))
        ? [asideTold]
        : [];
}

function statedClearing({ clearing: { stated } }: CardContents): Item[] {
    if (!stated) return [];
    const words = `${stated.order.join(', ')}${stated.because ? `: ${stated.because}` : ''}.`;
    return [{ lead: 'The team’s order', words }];
}

/** Fish on each line in the order of setting, as the working table is. */
export function clearingRows({ clearing, rows }: CardContents): ClearingRow[] {
    const places = new Map(rows.map(({ name }, index) => [name, index]));
    return [...clearing.after].sort((a, b) => (places.get(a.hooked) ?? 0) - (places.get(b.hooked) ?? 0));
}

/** Lines in a row that share a reason are said together. */
function grouped(order: readonly { readonly position: string; readonly reason: string }[]): string[] {
    const groups: { positions: string[]; reason: string }[] = [];
    for (const { position, reason } of order) {
        const last = groups.at(-1);
        if (last?.reason === reason) last.positions.push(position);
        else groups.push({ positions: [position], reason });
    }
    return groups.map(({ positions, reason }) => `${positions.join(', then ')} (${reason})`);
}

function fallbackItems({ fallbacks, spares }: CardContents): Item[] {
    return [
        ...fallbacks.map(({ when, steps }) => ({
            lead: capital(when),
            words: steps.map(sentence).join(' '),
        })),
        ...(spares.length > 0 ? [{ lead: 'Spares', words: `${spares.join('; ')}.` }] : []),
    ];
}

function findingItems({ findings }: CardContents): Item[] {
    return findings.map(({ number, severity, rule, message }) => ({
        number,
        lead: `${capital(severity)}, ${rule.replaceAll('-', ' ')}`,
        words: message,
    }));
}

function waiverItems({ waivers }: CardContents): Item[] {
    return waivers.map(({ rule, where, because, until, runOut }) => ({
        lead: capital([rule.replaceAll('-', ' '), where].filter(Boolean).join(' ')),
        words: [
            because ? sentence(because) : 'No reason given.',
            until && (runOut ? `Ran out on ${until}.` : `Until ${until}.`),
        ]
            .filter(Boolean)
            .join(' '),
    }));
}

function figureItems(card: CardContents, tabled: boolean): Item[] {
    const { turns, clearing, remarks } = card;
    const leaning = [
        ...(isMarked(card) ? [`A ${estimateMark} before a figure: it leans on an estimate.`] : []),
        ...(tabled ? asideOf(card) : []),
        ...(turns.sides.length > 0 ? turns.remarks : []),
        ...clearing.remarks,
    ];
    return sentences([...new Set([...remarks, ...leaning])]);
}

function isMarked({ rows, turns }: CardContents): boolean {
    return (
        rows.some(({ back, reading }) => back?.about || reading?.includes(estimateMark)) ||
        turns.sides.some(({ clean, working }) => (clean ?? working)?.radius.about)
    );
}

function sentence(words: string): string {
    return closed(capital(words));
}

/** A line of the table as one sentence, for where there is no table. */
export function rowWords(row: CardRow): string {
    const { gear, kind, length, outfit, lineClass, back, wave, part, reading, from, clip, drags, tested } =
        row;
    const towed = [gear, kind, length && inWords(length)].filter(Boolean).join(', ');
    const held = [outfit, lineClass && inWords(lineClass)].filter(Boolean).join(', ');
    const stages = (['set', 'hooked', 'full'] as const).flatMap((stage) =>
        drags[stage] ? [`${stage} ${inWords(drags[stage])}`] : [],
    );
    const scale = tested && `scale test ${tested.date}${tested.by ? ` by ${tested.by}` : ''}`;
    const parts = [
        row.role === 'fished' ? undefined : row.role === 'standby' ? 'standing by' : 'teaser',
        towed,
        held,
        back && [`${inWords(back)} back`, wave, part].filter(Boolean).join(', '),
        reading,
        from && `from ${from}`,
        clip && ['clip', inWords(clip), row.wraps].filter(Boolean).join(' '),
        row.loop && `${inWords(row.loop)} loop`,
        stages.length > 0 && `drag ${listed(stages)}`,
        row.wait && `${row.wait} from the bite to hooked drag`,
        scale,
        row.angler && `angler ${row.angler}`,
    ];
    return parts.filter(Boolean).join('; ');
}

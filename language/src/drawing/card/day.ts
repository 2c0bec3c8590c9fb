import { type Call, callsOf } from '../../plan/day/calls.ts';
import { type ChangeOver, changeOver, isElsewhere, type Step } from '../../plan/day/change-over.ts';
import { conditionWords, dayTitle, hourWords } from '../../plan/day/words.ts';
import type { LineFigures } from '../../plan/figures.ts';
import type { Condition, Day, Hour, Spread } from '../../plan/model.ts';
import { capital } from '../../plan/wording.ts';
import { printTime } from '../../units/time.ts';
import { plainText } from '../words.ts';
import { settingOnCard } from './handling.ts';
import { ofLinesOut } from './out.ts';
import { type CardRow, rowsOf } from './rows.ts';
import type { Item, Section } from './sections.ts';
import { closed } from './team.ts';
import { inWords, toldLength } from './told.ts';

/** Said wherever a crew is told to handle lines under way. */
const dayCaution =
    'One line at a time, on the skipper’s word and at a speed at which a line can be held: no loop of it round a hand ' +
    'or a foot, and the other lines watched meanwhile (common practice).';

/**
 * A day in words: which spread when, then what has to be done from one to the next.
 *
 * @param from  only what begins with this spread: for the card of that spread
 */
export function daySections(day: Day, from?: Spread): Section[] {
    const calls = callsOf(day).filter((call) => from === undefined || call.from.name === from.name);
    const overs = calls.map((call) => ({ call, over: changeOver(call.from, call.to) }));
    const heading = (call: Call) =>
        from
            ? `${capital(call.when)}: over to ${call.to.title}`
            : `${capital(call.when)}: ${call.from.title} to ${call.to.title}`;
    const sections: Section[] = [
        { id: `day-${day.name}`, title: `The day: ${dayTitle(day)}`, items: timeline(day, from) },
        ...overs.map(({ call, over }, index) => ({
            id: `over-${day.name}-${index + 1}`,
            title: heading(call),
            items: stepItems(over),
        })),
    ];
    const caution: Item[] = overs.length > 0 ? [{ lead: 'Changing over', words: dayCaution }] : [];
    return sections.map((section, index) =>
        plain(index === 0 ? { ...section, items: [...section.items, ...caution] } : section),
    );
}

function timeline({ hours, conditions, until, notes }: Day, from: Spread | undefined): Item[] {
    const told = ({ plan }: Hour | Condition) =>
        closed(from?.name === plan.value.name ? `${plan.value.title} (this sheet)` : plan.value.title);
    return [
        ...hours.map((hour): Item => ({ lead: hourWords(hour), words: told(hour) })),
        ...conditions.map((each): Item => ({ lead: capital(conditionWords(each)), words: told(each) })),
        ...(until ? [{ lead: printTime(until.value), words: 'Lines in for good.' }] : []),
        ...(conditions.length > 1
            ? [{ words: 'Where several of these hold, the one that stands first counts.' }]
            : []),
        ...notes.map(({ value }): Item => ({ words: closed(value) })),
    ];
}

function stepItems({ after, steps, remarks }: ChangeOver): Item[] {
    if (steps.length === 0) return [{ words: 'Nothing on the lines changes.' }];
    const out = { ...after, plan: ofLinesOut(after.plan) };
    const rows = new Map(rowsOf(after, settingOnCard(out)).map((row) => [row.name, row]));
    const words = (step: Step): Omit<Item, 'number'> => {
        switch (step.kind) {
            case 'all': {
                const { path, before, after: now } = step.difference;
                const was = before === undefined ? '' : ` (it was ${before})`;
                return { lead: capital(path.join(' ')), words: `${now ?? 'no longer said'}${was}.` };
            }
            case 'in':
                return {
                    lead: capital(nameOf(step.line)),
                    words: `take in ${gearOf(step.line)}${whyIn(step)}.`,
                };
            case 'set': {
                const row = rows.get(nameOf(step.line));
                const moved = step.from === undefined ? '' : `, from ${step.from}`;
                return {
                    lead: capital(nameOf(step.line)),
                    words: `set ${[`${gearOf(step.line)}${moved}`, ...(row ? whereWords(row) : [])].join('; ')}.`,
                };
            }
            case 'adjust':
                return { lead: capital(nameOf(step.line)), words: closed(adjusting(step)) };
        }
    };
    const numbered = steps.map((step, index): Item => ({ number: index + 1, ...words(step) }));
    return [...numbered, ...remarks.map((remark) => ({ words: remark }))];
}

function whyIn({ why, to }: Step & { kind: 'in' }): string {
    if (why === 'moves') return `; it goes to ${to}`;
    return why === 'changes' ? '; it is rigged anew' : '; it stays in';
}

/** What it takes to put a line out; its drags are set, and its own sheet has the rest. */
function whereWords({ outfit, back, wave, reading, from, clip }: CardRow): string[] {
    const told = [
        outfit && `on ${outfit}`,
        back && [`${inWords(back)} back`, wave].filter(Boolean).join(', '),
        reading,
        from && `from ${from}`,
        clip && `clip ${inWords(clip)}`,
    ];
    return told.filter((words) => words !== undefined);
}

function adjusting({ line, was, differences }: Step & { kind: 'adjust' }): string {
    const told = differences.map(({ path, before, after }) => {
        const words = `${path.join(' ')} ${after ?? 'as usual'}${before === undefined ? '' : ` (it was ${before})`}`;
        return path[0] === 'back' ? `${words}${byHowMuch(was, line)}` : words;
    });
    const { back } = line.line;
    const isTold = differences.some(({ path }) => path[0] === 'back');
    if (isTold || back?.kind !== 'wave' || !isElsewhere(was, line)) return told.join('; ');
    return [`wave ${back.wave.si} lies elsewhere at this speed${byHowMuch(was, line)}`, ...told].join('; ');
}

/** `, 8.3 m (27 ft) farther out`, where both places are known. */
function byHowMuch(was: LineFigures, is: LineFigures): string {
    if (!was.astern.known || !is.astern.known) return '';
    const metres = is.astern.value - was.astern.value;
    const { back } = is.line;
    const like = back?.kind === 'distance' ? back.distance.quantity : undefined;
    const told = inWords({
        ...toldLength(Math.abs(metres), like),
        ...([was, is].some(({ astern }) => astern.known && astern.standing === 'estimated') && {
            about: true,
        }),
    });
    return metres === 0 ? '' : `, ${told} ${metres > 0 ? 'farther out' : 'nearer'}`;
}

function gearOf({ line: { lure, teaser, bait, position } }: LineFigures): string {
    return (lure ?? teaser ?? bait)?.value.title ?? `the line of ${position.name}`;
}

function nameOf({ line }: LineFigures): string {
    return line.position.name;
}

/** None of it may steer a terminal or turn the writing. */
function plain({ id, title, items }: Section): Section {
    return {
        id,
        title: plainText(title),
        items: items.map(({ number, lead, words }) => ({
            ...(number !== undefined && { number }),
            ...(lead !== undefined && { lead: plainText(lead) }),
            words: plainText(words),
        })),
    };
}

import { URI } from 'langium';
import { sceneFromAbove } from '../drawing/scene.ts';
import { svgOf } from '../drawing/svg.ts';
import { plainText } from '../drawing/words.ts';
import { messageOf } from '../plan/finding.ts';
import { load } from '../plan/load.ts';
import { planEnding } from '../plan/names/uses.ts';
import { createServices } from '../plan/services.ts';
import { checkAll } from '../rules/check.ts';
import type { Fence } from './protocol.ts';

/** So many errors are told of a text; who writes a plan has an editor for the rest. */
const few = 5;

/** Low and wide, as the column of a page is; the words around it are its title. */
const wishes = { bow: 'right', paper: { width: 210, height: 110 }, foot: false } as const;

/** What the bundle of this file holds. */
export interface FenceDrawer {
    readonly drawFence: typeof drawFence;
}

/**
 * Draws the plans in a text that no file holds, apart from all that a server keeps: nothing of them stays. A bundle of
 * its own, since a server starts more often than notes are looked at, and reads files otherwise.
 *
 * @param at  where it counts as lying
 * @param textOf  of what it uses; undefined where that is not there
 */
export async function drawFence(
    text: string,
    at: string,
    textOf: (uri: string) => string | undefined,
): Promise<Fence> {
    const loaded = await load(createServices(), [URI.parse(at)], (uri) => {
        if (!uri.path.endsWith(planEnding)) return { kind: 'unread', reason: 'does not end in .spread' };
        const there = uri.toString() === at ? text : textOf(uri.toString());
        return there === undefined ? { kind: 'missing' } : { kind: 'text', text: there };
    });
    const [sheet] = checkAll(loaded, { once: true });
    if (!sheet) return { pictures: [], told: ['The text cannot be read.'] };
    const { plans, judgement, findings } = sheet;
    const errors = findings.filter(({ severity }) => severity === 'error');
    const more = errors.length - few;
    return {
        pictures: plans.map((plan) =>
            svgOf(sceneFromAbove(plan, judgement.plans.get(plan.plan.name) ?? []), wishes),
        ),
        told: [
            ...errors
                .slice(0, few)
                .map((each) => plainText(`Line ${each.at.range.start.line + 1}: ${messageOf(each)}`)),
            ...(more > 0 ? [`And ${more} more.`] : []),
            ...(plans.length === 0 ? ['There is no spread in this text.'] : []),
        ],
    };
}

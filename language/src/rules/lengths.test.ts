import { expect, test } from 'vitest';
import { checkText, messagesOf, today } from '../../../tests/language/marked.ts';

/** Of the 24 kg class; IGFA saltwater allows 9.14 m each and 12.19 m together. */
const fished = (double: string, leader: string, rules = 'harbour-cup', own = '') =>
    today(
        `    event ${rules}\n    port short corner { outfit own  lure own  back wave 2 }`,
        `${own}
outfit own "Own" { line nylon { class 24 kg }  double { length ${double} } }
lure own "Own lure" pusher { leader nylon { length ${leader} } }`,
    );
const finding = async (text: string, rule: string) =>
    (await checkText(text)).findings.find((one) => one.rule === rule);

test('a length over the limit is said whole, each as it was written, with what to cut it to', async () => {
    expect(await messagesOf(fished('1 m', '9.3 m'), 'leader-length')).toEqual([
        'The leader of Own lure is 9.3 m long, and IGFA saltwater allows 9.14 m. A fish on it does not count. Cut it to 8.9 m or less.',
    ]);
    expect(await messagesOf(fished('6.2 m', '6 m'), 'combined-length')).toEqual([
        'Double and leader at port short corner are together 12.2 m long, and IGFA saltwater allows 12.19 m. A fish on it does not count. Cut them to 12 m or less.',
    ]);
    // Whose author measures in millimetres is told in millimetres.
    expect((await messagesOf(fished('1 m', '9301 mm'), 'leader-length'))[0]).toContain('is 9301 mm');
});

test('a length inside the margin is said whole, and shows where limit and margin are written', async () => {
    const near = fished('1 m', '9.05 m');
    expect(await messagesOf(near, 'leader-length')).toEqual([
        'The leader of Own lure is 9.05 m long, inside the 15 cm kept under the 9.14 m of IGFA saltwater. Nylon stretches in a fight and is measured after it. Cut it to 8.99 m or less.',
    ]);
    const found = await finding(near, 'leader-length');
    expect(found?.related.map(({ what }) => what)).toContain('The margin is said here.');
    expect(found?.positions).toEqual(['port short corner']);
});

test('a team that keeps no margin is held to the limit itself', async () => {
    const lax = 'rules lax "Lax" { written saltwater }';
    expect(await messagesOf(fished('1 m', '9.14 m', 'lax', lax), 'leader-length')).toEqual([]);
    expect((await messagesOf(fished('1 m', '9.2 m', 'lax', lax), 'leader-length'))[0]).toMatch(
        / Cut it to 9\.1 m or less\.$/,
    );
});

test('a book that limits the leader alone says nothing of the double, and cuts the leader to its own limit', async () => {
    const club = 'rules club "Club" { limits { leader 8 m } }';
    expect(await messagesOf(fished('30 m', '8 m', 'club', club), 'leader-length')).toEqual([]);
    const long = await finding(fished('30 m', '8.2 m', 'club', club), 'leader-length');
    expect(long?.fixes.map(({ title }) => title)).toEqual([expect.stringContaining('Cut the leader to 8 m')]);
    expect(await messagesOf(fished('30 m', '8.2 m', 'club', club), 'combined-length')).toEqual([]);
});

test('a limit that is no whole number of inches is the same in feet and in metres', async () => {
    // 8.02 m are 26 ft 3.75 in.
    const club = 'rules club "Club" { limits { leader 8.02 m } }';
    const found = (leader: string) => messagesOf(fished('1 m', leader, 'club', club), 'leader-length');
    expect(await found('26 ft 3 in')).toEqual([]);
    expect(await found('26 ft 4 in')).toHaveLength(1);
});

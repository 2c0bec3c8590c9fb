import { request } from 'node:http';

export interface Answer {
    status: number;
    headers: Readonly<Record<string, string | string[] | undefined>>;
    body: string;
}

/** Asks a server on loopback for exactly this path: nothing tidies it on the way, as a browser or `fetch` would. */
export function ask(
    port: number,
    path: string,
    {
        method = 'GET',
        headers = {},
        body,
    }: { method?: string; headers?: Record<string, string>; body?: string } = {},
): Promise<Answer> {
    return new Promise((resolve, reject) => {
        const asking = request({ host: '127.0.0.1', port, path, method, headers, agent: false }, (answer) => {
            const parts: Buffer[] = [];
            answer.on('data', (part: Buffer) => parts.push(part));
            answer.on('error', reject);
            answer.on('end', () =>
                resolve({
                    status: answer.statusCode ?? 0,
                    headers: answer.headers,
                    body: Buffer.concat(parts).toString(),
                }),
            );
        });
        asking.on('error', reject);
        asking.end(body);
    });
}

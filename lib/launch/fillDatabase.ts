import { connect } from "./connect";
import { migrate } from "./migrate";
import { Refusal } from "./refusal";
import { runNode } from "./run";

type Fill = (url: string) => Promise<void>;

/**
 * Makes the database `name` of a server, migrated and filled; an existing one is only migrated.
 *
 * It gets its name last, so a start that was interrupted leaves no half-filled database behind.
 *
 * @returns Its address.
 */
export async function makeDatabase(url: (name: string) => string, name: string, fill: Fill): Promise<string> {
  const server = await connect(url("postgres"));
  try {
    const { rowCount } = await server.query("SELECT 1 FROM pg_database WHERE datname = $1", [name]);
    if (rowCount === 0) {
      const fresh = `${name}_new`;
      await server.query(`DROP DATABASE IF EXISTS ${fresh} WITH (FORCE)`);
      await server.query(`CREATE DATABASE ${fresh}`);
      await migrate(url(fresh));
      await fill(url(fresh));
      await server.query(`ALTER DATABASE ${fresh} RENAME TO ${name}`);
    }
  } finally {
    await server.end();
  }
  await migrate(url(name));
  return url(name);
}

/** Makes the database `name` of a server without any table, unless it is there. @returns Whether it was made. */
export async function makeEmptyDatabase(url: (name: string) => string, name: string): Promise<boolean> {
  const server = await connect(url("postgres"));
  try {
    const { rowCount } = await server.query("SELECT 1 FROM pg_database WHERE datname = $1", [name]);
    if (rowCount === 0) await server.query(`CREATE DATABASE ${name}`);
    return rowCount === 0;
  } finally {
    await server.end();
  }
}

/** Makes the database `name` of a server as `from` stands, to which nobody may be connected. @returns Its address. */
export async function copyDatabase(
  url: (name: string) => string,
  from: string,
  name: string,
): Promise<string> {
  const server = await connect(url("postgres"));
  try {
    await server.query(`CREATE DATABASE ${name} TEMPLATE ${from}`);
  } finally {
    await server.end();
  }
  return url(name);
}

/** Removes a database of a server, and who is connected to it. */
export async function dropDatabase(url: (name: string) => string, name: string): Promise<void> {
  const server = await connect(url("postgres"));
  try {
    await server.query(`DROP DATABASE IF EXISTS ${name} WITH (FORCE)`);
  } finally {
    await server.end();
  }
}

/** Whether neither a site nor a person is known yet. */
export async function isEmpty(url: string): Promise<boolean> {
  const client = await connect(url);
  try {
    const { rows } = await client.query<{ empty: boolean }>(
      `SELECT NOT EXISTS (SELECT FROM "Site") AND NOT EXISTS (SELECT FROM "User") AS empty`,
    );
    return rows[0]?.empty ?? false;
  } finally {
    await client.end();
  }
}

/** Fills a migrated, empty database with the demonstration company. */
export async function seedDemo(url: string, signal?: AbortSignal): Promise<void> {
  const done = await runNode(["--conditions=react-server", "--import", "tsx", "seed/index.ts", "showcase"], {
    env: { DATABASE_URL: url },
    output: "quiet",
    ...(signal ? { signal } : {}),
  });
  if (!done)
    throw new Refusal(
      "The demonstration company could not be written, for the reason above; EBBLINE_DEMO=no starts without it.",
    );
}

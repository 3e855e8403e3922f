import { readdirSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { PrismaPg } from "@prisma/adapter-pg";
import {
  bindSqlAdapterFactory,
  ColumnTypeEnum,
  type SqlDriverAdapter,
  type SqlQuery,
} from "@prisma/driver-adapter-utils";
import * as engine from "@prisma/schema-engine-wasm/schema_engine_bg";

const schemaFolder = fileURLToPath(new URL("./schema", import.meta.url));

/**
 * SQL that turns the database at `url` into what `prisma/schema` says; empty when they agree.
 *
 * Prisma's own command wants an engine that is fetched from the web; the WebAssembly one comes with npm.
 */
export async function difference(url: string): Promise<string> {
  await load();
  const files = readdirSync(schemaFolder).map((name) => ({
    path: join(schemaFolder, name),
    content: readFileSync(join(schemaFolder, name), "utf8"),
  }));
  const started = await engine.SchemaEngine.new(
    { datamodels: files.map(({ path, content }): [string, string] => [path, content]) },
    () => undefined,
    bindSqlAdapterFactory(new CatalogueReader({ connectionString: url })),
  );
  try {
    const found = await started.diff({
      from: { tag: "schemaDatasource", files, configDir: schemaFolder },
      to: { tag: "schemaDatamodel", files },
      script: true,
      exitCode: null,
      filters: { externalTables: ["public._prisma_migrations"], externalEnums: [] },
    });
    return (found.stdout ?? "").trim();
  } finally {
    started.free();
  }
}

/** PostgreSQL's one-byte "char", which its catalogue is full of and the adapter does not know. */
const SINGLE_BYTE_CHAR = 18;
const TEXT = 25;

class CatalogueReader extends PrismaPg {
  override async connect() {
    return readingSingleBytes(await super.connect());
  }
  override async connectToShadowDb() {
    return readingSingleBytes(await super.connectToShadowDb());
  }
}

/** Lets the adapter take single bytes for text, then marks the columns as characters again. */
function readingSingleBytes<A extends SqlDriverAdapter>(adapter: A): A {
  const open = adapter as A & { performIO(query: SqlQuery): Promise<{ fields: { dataTypeID: number }[] }> };
  const perform = open.performIO.bind(open);
  const query = open.queryRaw.bind(open);
  const singleBytes = new WeakMap<SqlQuery, number[]>();
  open.performIO = async (asked) => {
    const answer = await perform(asked);
    const columns = answer.fields.flatMap((field, i) => (field.dataTypeID === SINGLE_BYTE_CHAR ? [i] : []));
    for (const i of columns) answer.fields[i] = { ...answer.fields[i], dataTypeID: TEXT };
    singleBytes.set(asked, columns);
    return answer;
  };
  open.queryRaw = async (asked) => {
    const rows = await query(asked);
    for (const i of singleBytes.get(asked) ?? []) rows.columnTypes[i] = ColumnTypeEnum.Character;
    return rows;
  };
  return open;
}

let loaded: Promise<void> | undefined;

function load(): Promise<void> {
  loaded ??= (async () => {
    const path = createRequire(import.meta.url)
      .resolve("@prisma/schema-engine-wasm")
      .replace(/schema_engine\.js$/, "schema_engine_bg.wasm");
    const { instance } = await WebAssembly.instantiate(readFileSync(path), {
      "./schema_engine_bg.js": engine as unknown as WebAssembly.ModuleImports,
    });
    engine.__wbg_set_wasm(instance.exports);
    (instance.exports.__wbindgen_start as () => void)();
  })();
  return loaded;
}

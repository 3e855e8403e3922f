import { describe, expect, it } from "vitest";
import { deskActions } from "@/test/support/access/deskActions";
import { methodsOf, readEndpoints } from "@/test/support/access/endpoints";
import { openPages, pages } from "@/test/support/access/pages";
import { openFiles, otherRoutes, routes } from "@/test/support/access/routes";
import { workActions } from "@/test/support/access/workActions";
import { listFiles } from "./sources";

const listed = {
  pages: Object.keys({ ...pages, ...openPages }).sort(),
  routes: Object.keys({ ...routes, ...otherRoutes }).sort(),
  actions: Object.keys({ ...workActions, ...deskActions }).sort(),
  files: Object.keys(openFiles).sort(),
};

describe("the access table", () => {
  it("names every page, route handler, action and file that is served, and none that is not there", () => {
    expect(readEndpoints()).toEqual(listed);
  });

  it("would miss a page, a file and a route that are new", () => {
    const files = [...listFiles("app", "public"), "app/(workspace)/planted/page.tsx", "public/planted.pdf"];
    const found = readEndpoints(files);
    expect(found.pages).toContain("/planted");
    expect(found.files).toContain("public/planted.pdf");
    expect(methodsOf("export async function GET() {}\nexport const { POST } = x;")).toEqual(["GET", "POST"]);
  });
});

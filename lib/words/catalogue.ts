import type { Language } from "@/lib/kernel/locale";
import data from "@/lib/words/de/data.json";
import forms from "@/lib/words/de/forms.json";
import imports from "@/lib/words/de/imports.json";
import intake from "@/lib/words/de/intake.json";
import ofInterface from "@/lib/words/de/interface.json";
import lines from "@/lib/words/de/lines.json";
import machines from "@/lib/words/de/machines.json";
import more from "@/lib/words/de/more.json";
import parts from "@/lib/words/de/parts.json";
import plans from "@/lib/words/de/plans.json";
import projects from "@/lib/words/de/projects.json";
import retrofit from "@/lib/words/de/retrofit.json";
import shell from "@/lib/words/de/shell.json";
import view from "@/lib/words/de/view.json";
import words from "@/lib/words/de/words.json";
import type { Catalogue } from "@/lib/words/speaker";

const GERMAN: Catalogue = {
  ...{ ...words, ...forms, ...data, ...imports, ...intake, ...ofInterface, ...lines, ...machines, ...more },
  ...{ ...parts, ...plans, ...projects, ...retrofit, ...shell, ...view },
};

/** All texts of a language by their English; English needs none. */
export const catalogueOf = (language: Language): Catalogue => (language === "de" ? GERMAN : {});

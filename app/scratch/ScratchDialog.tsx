"use client";
import { useState } from "react";
import { Dialog } from "@/app/_ui/Dialog";
import { TextField } from "@/app/_ui/field/TextField";
import { SubmitButton } from "@/app/_ui/SubmitButton";
import { UndoBar } from "@/app/_ui/UndoBar";
import { Button } from "@/app/_ui/Button";
export function ScratchDialog() {
  const [m, setM] = useState<string | null>(null);
  return <>
    <Dialog trigger="Add an event" title="Add an event">{(close) => <form className="grid gap-4" onSubmit={(e) => { e.preventDefault(); close(); setM("1 event added at VEL-03."); }}><TextField label="What happened" name="x" required /><div><SubmitButton>Add</SubmitButton></div></form>}</Dialog>
    <Button onClick={() => setM("4 pieces put on hold at VEL.")}>Show undo</Button>
    <UndoBar message={m} onUndo={async () => {}} onClose={() => setM(null)} />
  </>;
}

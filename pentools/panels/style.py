"""The look of the panels: one style sheet, and the small pieces of HTML that every panel uses."""

from __future__ import annotations

from pentools.markup import findings_html, sentence_html, table_html

__all__ = ["STYLE", "findings_html", "sentence_html", "table_html"]

STYLE = """<style>
.jp-Notebook:has(.pentools) .jp-CodeCell:has(.pentools) .jp-Cell-inputWrapper:has(.jp-InputPlaceholder) { display:none; }
.jp-Notebook:has(.pentools) .jp-MarkdownCell:not(.jp-mod-active) .jp-MarkdownOutput { max-height:4.6em; overflow:hidden;
  mask-image:linear-gradient(#000 70%,transparent); }
.jp-Notebook:has(.pentools) .jp-MarkdownOutput { padding-bottom:0; } .jp-Notebook:has(.pentools) .jp-MarkdownOutput > :last-child { margin-bottom:0!important; }
.jp-Notebook:has(.pentools) .jp-Cell { padding-top:2px; padding-bottom:2px; }
.jp-Notebook:has(.pentools) .jp-MarkdownOutput h1, .jp-Notebook:has(.pentools) .jp-MarkdownOutput h2 { font-size:1.25em; margin:0 0 .2em; }
.pentools { --ink:#1f3a5f; --brass:#8f6614; --jade:#2a7565; --oxblood:#8c2f39; --slate:#5b6670; --paper:#fbfaf6;
  --rule:#d9d5c8; background:var(--paper); color:#1d2329; border:1px solid var(--rule); border-radius:3px;
  padding:14px 18px; margin:4px 0 10px; font-size:14px; line-height:1.45; max-width:1180px; overflow:visible; }
.pentools .jupyter-widgets, .pentools .widget-html-content { color:#1d2329; line-height:1.45; font-size:inherit; }
.pentools h2 { font-size:1.35em; margin:0 0 2px; color:var(--ink); font-family:Georgia,"Times New Roman",serif; }
.pentools h3 { font-size:1.05em; margin:6px 0 2px; color:var(--ink); }
.pentools p { margin:2px 0 6px; max-width:46em; }
.pentools .pt-state { display:inline-block; font-size:.8em; border:1px solid currentColor; border-radius:2px;
  padding:0 .5em; margin-left:.6em; vertical-align:middle; font-family:sans-serif; color:var(--slate); }
.pentools .pt-state-done { color:var(--jade); border-width:2px; }
.pentools .pt-state-held { color:var(--oxblood); border-style:double; border-width:3px; }
.pentools .pt-state-open { color:var(--brass); border-style:dashed; }
.pentools .pt-columns { display:flex; flex-flow:row wrap; gap:24px; align-items:flex-start; overflow:visible; }
.pentools .pt-entry { flex:1 1 32em; min-width:17em; overflow:visible; }
.pentools .pt-result { flex:1000 1 26em; min-width:17em; overflow:visible; }
.pentools .pt-field { width:100%; margin:0 0 8px; overflow:visible; }
.pentools .pt-field .widget-text, .pentools .pt-field .widget-textarea, .pentools .pt-field .widget-dropdown,
.pentools .pt-field .widget-combobox, .pentools .pt-row .widget-text, .pentools .pt-row .widget-dropdown {
  display:flex; flex-direction:column; align-items:stretch; height:auto; width:100%; margin:0; overflow:visible; }
.pentools .widget-label { width:auto!important; max-width:none; height:auto; text-align:left; white-space:normal;
  overflow:visible; color:#1d2329; font-weight:600; line-height:1.35; font-size:inherit; padding:0 0 2px; }
.pentools input, .pentools textarea, .pentools select { width:100%!important; box-sizing:border-box;
  min-height:32px; font-size:inherit!important; background-color:#fff!important; color:#1d2329!important;
  border:1px solid #8b8f94!important; border-radius:2px; padding:3px 8px!important; }
.pentools .pt-field input, .pentools .pt-field select, .pentools .pt-field textarea,
.pentools .pt-row input, .pentools .pt-row select { flex:0 0 auto!important; }
.pentools select { height:34px!important; }
.pentools textarea { min-height:4.2em; resize:vertical; }
.pentools input:focus, .pentools textarea:focus, .pentools select:focus, .pentools button:focus-visible {
  outline:3px solid var(--brass)!important; outline-offset:1px; }
.pentools .pt-hint { color:var(--slate); font-size:.88em; }
.pentools .pt-error { color:var(--oxblood); font-weight:600; border-left:4px solid var(--oxblood); padding-left:8px; }
.pentools .pt-saved { color:var(--jade); font-weight:600; }
.pentools .pt-sentence { font-size:1.5em; line-height:1.3; font-family:Georgia,"Times New Roman",serif;
  color:var(--ink); margin:0 0 10px; max-width:32em; }
.pentools .jupyter-button { width:auto!important; min-height:34px; height:auto!important; padding:4px 16px; margin:0 8px 6px 0;
  font-size:inherit; background:#fff; color:var(--ink); border:1px solid var(--ink); border-radius:2px; white-space:normal;
  line-height:1.3; box-shadow:none; overflow:visible; }
.pentools .pt-result .jupyter-button, .pentools .widget-toggle-button, .pentools.pt-check > .jupyter-button { align-self:flex-start; }
.pentools .jupyter-button.pt-main { background:var(--ink); color:#fff; font-weight:600; }
.pentools .jupyter-button.mod-active { background:var(--ink); color:#fff; }
.pentools .jupyter-button:disabled { color:var(--slate); border-style:dashed; opacity:1; }
.pentools .pt-kinds { flex-flow:row wrap; align-items:baseline; overflow:visible; } .pentools .pt-kinds .widget-toggle-buttons { height:auto; width:auto; overflow:visible; }
.pentools.pt-is-open .pt-panel-head { display:none; }
.pentools .pt-row { gap:10px; flex-flow:row wrap; align-items:flex-end; overflow:visible; width:100%; }
.pentools .pt-row .widget-dropdown { width:22em; } .pentools .pt-row .widget-text { width:20em; }
.pentools table.data { border-collapse:collapse; font-size:.93em; margin:4px 0 10px; font-variant-numeric:tabular-nums; }
.pentools table.data caption { text-align:left; font-weight:600; padding:4px 0; color:#1d2329; caption-side:top; }
.pentools table.data th, .pentools table.data td { text-align:left; padding:3px 14px 3px 0; vertical-align:top;
  border-bottom:1px solid var(--rule); background:none; }
.pentools table.data td:first-child { white-space:nowrap; }
.pentools table.data th { font-weight:600; color:var(--slate); }
.pentools ul.findings { list-style:none; margin:0 0 10px; padding:0; max-width:46em; }
.pentools ul.findings li { margin:0 0 5px; padding-left:8px; border-left:4px solid var(--slate); }
.pentools ul.findings .level { font-weight:600; }
.pentools ul.findings li.warning { border-left:4px double var(--brass); }
.pentools ul.findings li.stop { border-left:6px solid var(--oxblood); }
.pentools ul.findings li.ok { border-left-color:var(--jade); }
.pentools .pt-hold { border:3px double var(--oxblood); padding:8px 12px; margin:6px 0 10px; max-width:46em; }
.pentools .pt-caution { border:1px solid var(--brass); border-left-width:6px; padding:6px 12px; margin:6px 0; max-width:46em; }
.pentools svg { max-width:100%; height:auto; }
.pentools.pt-slot { padding:2px 18px; margin:0 0 4px; }
.pentools.pt-slot.pt-is-open { padding:8px 18px 12px; border-left:4px solid var(--ink); }
.pentools .pt-line { display:grid; grid-template-columns:1.4em minmax(11em,15em) 1fr; align-items:baseline; overflow:visible; }
.pentools .pt-line .jupyter-button.pt-way-in { border:none; background:none; font-weight:600; text-align:left; padding:2px 6px; margin:0;
  min-height:30px; font-family:Georgia,"Times New Roman",serif; text-decoration:underline; text-decoration-color:var(--rule); }
.pentools .pt-line-sentence .widget-html-content { overflow:hidden; text-overflow:ellipsis; display:-webkit-box; -webkit-line-clamp:2;
  -webkit-box-orient:vertical; }
.pentools.pt-is-held .pt-line-sentence { color:var(--oxblood); }
.pentools .pt-mark { font-weight:700; color:var(--slate); } .pentools .pt-mark-done { color:var(--jade); }
.pentools .pt-mark-held { color:var(--oxblood); } .pentools .pt-mark-open { color:var(--brass); }
.pentools .pt-head { display:flex; gap:24px; justify-content:space-between; align-items:flex-start; }
.pentools .pt-head > div:first-child { flex:1 1 24em; } .pentools .pt-pen { flex:0 1 30em; } .pentools .pt-pen svg { max-height:150px; }
.pentools .pt-next { font-size:1.2em; } .pentools .pt-waits { color:var(--oxblood); font-weight:600; }
.pentools .pt-ways { flex-flow:row wrap; gap:6px; overflow:visible; padding:6px 0; border-top:1px solid var(--rule); }
.pentools .pt-ways .jupyter-button { margin:0; padding:2px 10px; min-height:30px; }
.pentools .pt-strip { border-top:2px solid var(--ink); padding:8px 0 4px; overflow:visible; }
.pentools .pt-strip-row { display:grid; grid-template-columns:1.3fr 1fr 1.3fr .9fr; gap:14px; overflow:visible; }
.pentools .pt-strip .widget-text { display:flex; flex-direction:column; align-items:stretch; height:auto; width:100%; margin:0; overflow:visible; }
.pentools .pt-strip input { min-height:38px; font-size:1.15em!important; flex:0 0 auto!important; }
.pentools .pt-strip .widget-toggle-buttons { height:auto; overflow:visible; } .pentools .pt-strip .widget-toggle-button { min-height:34px; margin:4px 0 0; }
.pentools .pt-fields { display:grid; grid-template-columns:1fr 1fr; gap:2px 16px; overflow:visible; }
.pentools .pt-fields .pt-wide { grid-column:1 / -1; }
.pentools a.pt-back { text-decoration:underline; margin-right:1em; }
.pentools .pt-bench-row { display:grid; grid-template-columns:minmax(14em,20em) 1fr; align-items:baseline; border-top:1px solid var(--rule); overflow:visible; }
.pentools .pt-bench-row .jupyter-button { text-align:left; margin:3px 8px 3px 0; }
.pentools .pt-owed { align-items:baseline; } .pentools .pt-onward { padding-top:8px; border-top:1px solid var(--rule); overflow:visible; }
.pentools .pt-ticks { flex-flow:row wrap; gap:2px 14px; align-items:center; overflow:visible; }
.pentools .widget-checkbox { width:auto; margin:0; height:auto; overflow:visible; }
.pentools .widget-checkbox .widget-label-basic { display:flex; align-items:center; gap:.5em; width:auto; min-height:34px; font-size:inherit; cursor:pointer; }
.pentools .widget-checkbox input { flex:none; width:20px!important; height:20px; min-height:0; margin:0; }
.pentools .pt-ticks .jupyter-button { margin:0; }
.pentools .pt-step { display:grid; grid-template-columns:1.25fr 1fr 7em; gap:2px 16px; border-top:1px solid var(--rule); overflow:visible; padding:1px 0; }
.pentools .pt-steps, .pentools .pt-steps .widget-vbox { overflow:visible; } .pentools .pt-steps .widget-checkbox { width:100%; }
.pentools .pt-steps .widget-checkbox .widget-label-basic { align-items:flex-start; white-space:normal; width:100%; min-height:30px; padding-top:4px; line-height:1.3; }
.pentools .pt-step.pt-step-told { grid-template-columns:1fr; }
.pentools .pt-closes { color:var(--oxblood); font-weight:600; font-size:.88em; } .pentools .pt-step-said { color:var(--jade); }
.pentools .pt-panel, .pentools .pt-form { overflow:visible; }
.pentools .pt-act { flex-flow:row wrap; gap:8px; align-items:center; overflow:visible; }
.pentools .pt-more { border-style:dashed!important; font-size:.92em; }
.pentools .pt-cautions { flex-flow:row wrap; gap:10px; align-items:baseline; overflow:visible; }
.pentools details.pt-caution { border:none; border-left:6px solid var(--brass); padding:2px 10px; margin:2px 0; max-width:60em; }
.pentools .pt-asked { color:var(--brass); font-weight:600; border-left:4px dashed var(--brass); padding-left:8px; }
.pentools .pt-read-as { color:var(--jade); }
.pentools .pt-scroll { overflow-x:auto; max-width:100%; }
.pentools.jupyter-widgets-disconnected::before { content:"Not connected: nothing is being saved. Run, Run All Cells brings the sheet back; what you typed stays.";
  display:block; background:var(--oxblood); color:#fff; font-weight:700; font-size:1.15em; padding:10px 14px; margin:-14px -18px 10px; }
.pentools.pt-slot.jupyter-widgets-disconnected:not(.pt-is-open)::before { content:none; }
.pentools.jupyter-widgets-disconnected .pt-saved { display:none; }
.pentools.jupyter-widgets-disconnected button { pointer-events:none; opacity:.45; }
.pentools.pt-large { font-size:20px; }
.pentools.pt-large input, .pentools.pt-large select, .pentools.pt-large .jupyter-button { min-height:48px; }
.pentools.pt-large select { height:48px!important; }
@media (max-width:900px) { .pentools .pt-strip-row { grid-template-columns:1fr 1fr; } }
@media (max-width:700px) { .pentools .pt-fields { grid-template-columns:1fr; } .pentools .pt-columns { flex-direction:column; } .pentools .pt-entry { width:100%; flex-basis:auto; } }
</style>"""

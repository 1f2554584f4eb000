/** Ink on paper, the same as on screen, without a font file: the page stays small. */
export const kitPageStyle = `
:root{color-scheme:light dark;--ground:#f2f3ef;--sheet:#fcfcfa;--ink:#15171b;--ink-2:#41454b;--rule:#d2d5ce;--tile:transparent}
@media (prefers-color-scheme:dark){:root{--ground:#141619;--sheet:#1c1f23;--ink:#f3f3ee;--ink-2:#c6c9c5;--rule:#33373c;--tile:#f2f3ef}}
*{box-sizing:border-box}
body{margin:0;background:var(--ground);color:var(--ink);font:500 19px/1.42 "Alegreya Sans","Segoe UI","Helvetica Neue",Arial,sans-serif;font-variant-numeric:lining-nums tabular-nums}
main,footer{max-width:880px;margin:0 auto;padding:0 24px}
h1{font-size:clamp(30px,6vw,46px);line-height:1.06;font-weight:800;letter-spacing:-.012em;margin:40px 0 12px;text-wrap:balance}
h2{font-size:26px;line-height:1.18;font-weight:800;margin:0 0 8px}
p,ul,ol{margin:0;padding:0}
.lead{font-size:21px;line-height:1.36;max-width:36em}
.note,small{font-size:16px;line-height:1.35;color:var(--ink-2);font-weight:500}
section{padding:32px 0 0}
.list,ol{list-style:none}
.list{border-top:2px solid var(--ink)}
.list li{border-bottom:1px solid var(--rule)}
label{display:flex;gap:16px;align-items:center;min-height:56px;padding:6px 0;cursor:pointer}
input{appearance:none;flex:none;width:28px;height:28px;margin:0;border:2px solid var(--ink);border-radius:14px;background:var(--sheet);display:grid;place-items:center}
input:checked{background:var(--ink)}
input:checked::after{content:"";width:12px;height:6px;border:solid var(--ground);border-width:0 0 3px 3px;transform:translateY(-2px) rotate(-45deg)}
input:focus-visible,a:focus-visible{outline:3px solid var(--ink);outline-offset:3px}
.swatch{flex:none;width:44px;height:22px;display:grid;place-items:center;background:var(--tile);border-radius:11px}
.swatch:empty{background:none}.swatch svg{width:44px;height:auto}
.what{flex:0 0 11em;line-height:1.2}
.what.wide{flex:1}
.what small{display:block}
.why{flex:1;line-height:1.25;color:var(--ink-2);font-size:17px}
.price{text-align:right;white-space:nowrap}
.sum{display:flex;justify-content:space-between;padding:6px 0}
.all{font-weight:800;border-top:2px solid var(--ink)}
ol{display:grid;grid-template-columns:repeat(auto-fill,minmax(230px,1fr));gap:8px 24px;counter-reset:n;margin-top:16px}
ol li{counter-increment:n;border-top:2px solid var(--ink);padding:8px 0 16px;break-inside:avoid}
ol svg{display:block;width:130px;height:143px;background:var(--tile)}
ol label{min-height:48px;gap:12px;font-size:21px;line-height:1.1}
ol b::before{content:counter(n) ". "}
ol p{font-size:17px;line-height:1.3}
.contact{display:flex;gap:32px;justify-content:space-between;align-items:end;flex-wrap:wrap}
.contact svg{width:180px;height:180px}
a{color:inherit;text-underline-offset:.2em;display:inline-block;padding:6px 0}
.care{margin-top:32px;border:2px solid var(--ink);padding:16px 20px}
.care p+p{margin-top:10px}
footer{padding-top:24px;padding-bottom:40px;font-size:16px;color:var(--ink-2)}
@media (max-width:640px){ol li{display:grid;grid-template-columns:96px 1fr;gap:0 14px}ol svg{width:96px;height:106px}.list label{flex-wrap:wrap;gap:8px 12px}.what{flex:1}.why{order:9;flex:0 0 100%;padding-left:40px;font-size:16px}.contact svg{width:150px;height:150px}}
@page{margin:14mm}
@media print{:root{--ground:#fff;--sheet:#fff;--ink:#000;--ink-2:#222;--rule:#999;--tile:transparent}
body{font-size:11pt}h1{font-size:20pt;margin-top:0}h2{font-size:14pt}.lead{font-size:12pt}.note,small,.why,ol p{font-size:10pt}
label{min-height:0;padding:3px 0}input{border-radius:0;width:14px;height:14px}section{padding-top:14px}.list li,.care,.contact{break-inside:avoid}
.lessons{break-before:page}ol{grid-template-columns:repeat(3,1fr)}ol svg{width:86px;height:95px}ol label{min-height:0;font-size:12pt}main,footer{max-width:none;padding:0}
.what{flex-basis:9em}.contact svg{width:110px;height:110px}}
`;

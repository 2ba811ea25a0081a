"""How the book looks: a page on a screen of any size, light or dark, and sheets of paper."""

from __future__ import annotations

from collections.abc import Mapping

from triage.book.colours import DARK, LIGHT, PAPER, variables

_SCREEN = """
*{box-sizing:border-box}
html{font:100%/1.5 system-ui,-apple-system,"Segoe UI",Roboto,"Noto Sans","Liberation Sans",Arial,sans-serif;
color:var(--ink);background:var(--page);scroll-padding-top:5.25rem;-webkit-text-size-adjust:100%;text-size-adjust:100%}
body{margin:0;overflow-wrap:break-word}
header,main,footer{max-width:42rem;margin:0 auto;padding:0 1rem}
header{padding-top:.6rem}
h1{font-size:1.25rem;line-height:1.25;margin:0}
h2{font-size:1.5rem;line-height:1.2;margin:3.5rem 0 .75rem}
h3{font-size:1.2rem;line-height:1.3;margin:0 0 .5rem;display:flex;gap:.6rem}
.walk>h3{flex-wrap:wrap}.walk>h3>span:last-child{flex:1}
.walk>h3::after{flex-basis:100%;font-size:.875rem;font-weight:400;color:var(--quiet)}
h4{font-size:1rem;margin:1rem 0 .25rem}
p{margin:.5rem 0}
ul,ol{margin:.5rem 0;padding-left:1.4rem}
li{margin:.3rem 0}
dl{margin:.5rem 0}dt{font-weight:700;margin-top:.75rem}dd{margin:0}
a{color:var(--link);text-underline-offset:.15em}
a:focus-visible,.wide:focus-visible{outline:3px solid var(--link);outline-offset:3px;border-radius:3px}
.meta,.why,.behind,.code,.standing,.other,caption{font-size:.9375rem;color:var(--quiet)}
.meta{margin:.2rem 0;font-size:.875rem}
h3 span:last-child,h2 span:last-child{min-width:0;overflow-wrap:anywhere}
.no{color:var(--quiet);font-weight:400;font-variant-numeric:tabular-nums;min-width:1.1em;flex:none}
.skip{position:absolute;left:-100rem}
.skip:focus{left:1rem;top:.5rem;background:var(--page);padding:.75rem;z-index:3}
.bar{position:sticky;top:0;z-index:2;background:var(--page);border-bottom:1px solid var(--soft);
display:flex;flex-wrap:wrap;justify-content:center;gap:0 .5rem}
.bar a{padding:.7rem .6rem .3rem;min-height:48px;text-decoration:none;font-size:.9375rem}
.bar p{flex-basis:100%;text-align:center;margin:0 0 .2rem;font-size:.875rem;color:var(--quiet)}
.bar p a{padding:.35rem .25rem;min-height:0;font-size:inherit;text-decoration:underline}
.other a{display:inline-block;padding:.9rem 0;font-size:1rem}
.bar a:hover{text-decoration:underline}
#first h2{font-size:1rem;font-weight:400;color:var(--quiet);margin:.4rem 0 0}
section.walk,section.how,section.table,section.drawn{border-top:1px solid var(--soft);padding:1.5rem 0 2.5rem;
margin:0}
#first section.walk:first-of-type{border:0;padding-top:0}
section.walk:target{min-height:calc(100vh - 5.25rem);min-height:calc(100svh - 5.25rem)}
section:target>h3,section:target>h2,section:target>div>h3{background:var(--lit);
box-shadow:-.5rem 0 0 var(--lit),.5rem 0 0 var(--lit)}
li:has(>:target),dt:target{background:var(--lit)}
.answers{list-style:none;padding:0;margin:.75rem 0}
.answers li{margin:.45rem 0}
.answers a{display:flex;flex-wrap:wrap;align-content:center;align-items:center;gap:0 .75rem;
min-height:52px;padding:.5rem .85rem;border:1px solid var(--edge);border-radius:.4rem;
text-decoration:none;line-height:1.3}
.answers a:hover{background:var(--lit)}
.answers span{color:var(--link);flex:1 1 8rem;min-width:0;overflow-wrap:anywhere}
.answers strong{order:3;flex-basis:100%;font-size:.9375rem;color:var(--ink)}.answers i{order:2}
.answers i,.leads i{font-style:normal;font-size:.9375rem;color:var(--quiet);white-space:nowrap;
font-variant-numeric:tabular-nums}
.again{border-left:3px solid var(--edge);padding-left:.75rem}
.call{border:1px solid var(--edge);border-radius:.4rem;padding:.75rem .85rem;margin:.75rem 0}
.call strong{display:block;font-size:1.2rem;line-height:1.3}
.c0{background:var(--now);color:var(--now-ink);border-color:var(--now)}
.c0 a{color:inherit}.call a{display:inline-block;padding:.6rem .2rem;font-size:1.1rem}
.end::after{content:"This way ends here.";display:block;margin-top:1rem;text-align:center;color:var(--quiet);
font-size:.9375rem}
.c1{border-width:3px;border-color:var(--ink)}
.steps a,.care a,.why a,.again a{padding:.45rem .1rem}
.steps li{margin:.5rem 0;padding-left:.25rem}
.care li{margin:.4rem 0}
.overdue{font-weight:700;border:3px solid var(--ink);padding:.5rem .75rem}
.entries{list-style:none;padding:0}
.entries>li{padding:.6rem 0;margin:0;border-top:1px solid var(--soft)}
.short{border-top:1px solid var(--soft);padding:1rem 0}
.leads ul{list-style:none;padding:0;margin:.1rem 0}
.leads li{margin:0}
.leads a,ul.leads a{display:inline-block;padding:.35rem 0}
ul.leads{list-style:none;padding:0}
.behind a,.entries a{padding:.2rem .1rem}
.wide{overflow-x:auto}
table{border-collapse:collapse;width:100%;font-variant-numeric:tabular-nums}
caption{text-align:left;padding:.25rem 0}
th,td{text-align:left;vertical-align:top;padding:.45rem .75rem .45rem 0;border-bottom:1px solid var(--soft)}
thead th{border-bottom:2px solid var(--edge);vertical-align:bottom}
.wide.map{position:relative}.map svg{display:block}.map .here{position:absolute;top:0;width:1px;height:1px;
scroll-initial-target:nearest}
@media (min-width:64rem){.wide.map{width:calc(100vw - 6rem);margin-left:calc(50% - 50vw + 3rem)}}
.sign{font-family:ui-monospace,monospace;white-space:nowrap}
.paper{display:none}
footer{border-top:1px solid var(--soft);margin-top:4rem;padding:1rem 1rem 3rem;
font-size:.9375rem;color:var(--quiet)}
@media (min-width:48rem){header{padding-top:2.5rem}h1{font-size:2rem}#first h2{margin-top:2rem}
html{font-size:112.5%}}
@media (prefers-reduced-motion:no-preference){a{transition:background-color .12s}}
"""

_PAPER = """
@page{margin:14mm 14mm 12mm;
@bottom-right{content:"Page " counter(page) " of " counter(pages);font:8pt Arial,sans-serif}}
html{font:9.5pt/1.32 Arial,Helvetica,"Liberation Sans",sans-serif}
body{display:table;width:100%}
header,main{max-width:none;padding:0;margin:0}
footer{display:table-footer-group;break-inside:avoid;font-size:7.5pt;line-height:1.25;padding:0;border:0}
footer p{margin:0}
footer p:first-child{border-top:.3mm solid #000;padding-top:1mm;margin-top:3mm}
.skip,.bar{display:none}
h1{font-size:20pt}
h2{font-size:15pt;margin:7mm 0 2mm}
h3{font-size:10.5pt;margin:0 0 1mm;gap:2mm}
h4{font-size:9.5pt;margin:1.5mm 0 .5mm}
h2,h3,h4{break-after:avoid}
h3 span:last-child,h2 span:last-child{min-width:0;overflow-wrap:anywhere}
.no{font-weight:700;font-size:12pt}
p,ul,ol,dl{margin:.8mm 0}
li,.steps li,.care li,.answers li{margin:.4mm 0}
a{text-decoration:none}
section.walk,section.how,section.table,section.drawn{padding:2.5mm 0;break-inside:avoid}
section.walk:target{min-height:0}
.topic{columns:2;column-gap:8mm}
.topic>h2,.topic>h2~h2{column-span:all}
.answers a{min-height:0;padding:.5mm 0;border:0;border-radius:0;border-bottom:.2mm dotted #000}
.answers i{font-weight:700;font-size:9pt}
.answers strong{font-size:8.5pt}
.again{border-left:.5mm solid #000;padding-left:2mm}
.call{padding:1mm 2mm;border:.3mm solid #000;border-radius:0}
.call strong{font-size:11pt}
.c0{background:#fff;color:#000;border-left:3mm solid #000}
.c1{border-width:.3mm .3mm .3mm 1.2mm}
.meta,.why,.behind,.code,.standing,.other,caption{font-size:8pt}
.entries{columns:2;column-gap:8mm}
.entries>li,.short{padding:1.2mm 0;break-inside:avoid}
.wide{overflow:visible}
th,td{padding:.7mm 3mm .7mm 0}
tr{break-inside:avoid}
thead{display:table-header-group}
.paper{display:inline}
div.paper{display:block}
.room ul{columns:2;list-style:none;padding:0}
.room li{display:flex;gap:2mm}
.blank{flex:1;display:inline-block;min-width:40mm;border-bottom:.2mm solid #000;height:1.3em}
.box{display:inline-block;width:3.4mm;height:3.4mm;border:.3mm solid #000;margin-left:1.5mm;
vertical-align:-.5mm}
.leads a,ul.leads a,.behind a,.entries a{padding:0}
#raising,#laws{columns:2;column-gap:8mm}
.part>h2{column-span:all}
.part>h2+p{break-after:avoid}
.drawn,.to-map,.maps{display:none}
"""


def style(topics: Mapping[str, str]) -> str:
    """Return the style sheet. `topics` are their titles by anchor: on a screen each section names its own.

    They stand here once, and not with every section, so that a book stays small.
    """
    named = "".join(
        f"#{anchor}>.walk>h3::after{{content:{_quoted(title)}}}" for anchor, title in topics.items()
    )
    screen = "".join(_SCREEN.split("\n"))
    paper = "".join(_PAPER.split("\n"))
    return (
        f":root{{{variables(LIGHT)}color-scheme:light dark}}"
        f"@media (prefers-color-scheme:dark){{:root{{{variables(DARK)}}}}}"
        f"{screen}@media screen{{{named}}}"
        f"@media print{{:root{{{variables(PAPER)}color-scheme:light}}{paper}}}"
    )


def _quoted(text: str) -> str:
    """Return a text as a string of CSS that nothing in it can end."""
    plain = (sign if sign.isalnum() or sign == " " else f"\\{ord(sign):x} " for sign in text)
    return f'"{"".join(plain)}"'

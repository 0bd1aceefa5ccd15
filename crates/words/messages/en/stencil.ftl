# What is told of stencils. Stencils are called by their number, as S03.
stencil-tool-unfit = { $tool ->
    [laser] A laser
    [router] A router
    [jigsaw] A jigsaw
   *[knife] A knife
} does not cut { $material ->
    [card] card
    [film] film
    [fluted] fluted polypropylene
    [solid-pe] solid polyethylene
   *[hardboard] hardboard
} well.
stencil-tool-fits = Cut it with { $tool ->
    [laser] a laser
    [router] a router
    [jigsaw] a jigsaw
   *[knife] a knife
}, or choose another material. Never laser-cut PVC or a plastic that you do not know.
stencil-falls = A piece would fall out of { $stencils }.
stencil-falls-mend = Choose a material that keeps narrower ties, or draw the figure with a gap in its band.
stencil-kerf = The tool is broader than an opening of { $stencils }: its cut is { $least } wide.
stencil-kerf-mend = Cut { $stencils } with a finer tool.
stencil-opening = { $stencils } { $count ->
    [one] has
   *[other] have
} an opening narrower than { $least }.
stencil-opening-mend = A roller hardly fills it: use a brush there.
stencil-web = { $stencils } { $count ->
    [one] has
   *[other] have
} a web narrower than { $least } between two openings.
stencil-web-mend = It tears soon: tape it from below, or paint the two openings through two plates.
stencil-thin = { $stencils } { $count ->
    [one] has
   *[other] have
} strips narrower than { $least }, the least tie of this material.
stencil-thin-mend = Film or solid polyethylene keeps them. Else strengthen them with tape.
stencil-tongue = { $stencils } { $count ->
    [one] has
   *[other] have
} a strip or tongue more than { $times } times as long as it is broad.
stencil-tongue-mend = It bends and lifts: weigh it down, or tape it to the ground while you paint.
stencil-ties = The ties of { $stencils } take more than { $share } % of the outline.
stencil-ties-mend = Painting them in takes long: choose a material that keeps narrower ties.
stencil-turned-over = { $stencils } { $count ->
    [one] is
   *[other] are
} also laid face down, for mirrored figures.
stencil-turned-over-mend = Let the plate dry and wipe it before you turn it over.
stencil-split = { $stencils } { $count ->
    [one] is
   *[other] are
} cut in panels: two people carry { $longest } and no more.
stencil-too-large = { $count ->
    [one] One shape is
   *[other] { $count } shapes are
} too large for a stencil. Draw { $count ->
    [one] it
   *[other] them
} by string and tape { $outline } of outline.

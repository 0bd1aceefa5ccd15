# Lo que se dice de las plantillas. Se llaman por su número, como S03.
stencil-tool-unfit = { $tool ->
    [laser] El láser
    [router] La fresadora
    [jigsaw] La sierra de calar
   *[knife] El cúter
} no corta bien { $material ->
    [card] el cartón
    [film] la lámina
    [fluted] el polipropileno alveolar
    [solid-pe] el polietileno macizo
   *[hardboard] el tablero de fibra
}.
stencil-tool-fits = Corta con { $tool ->
    [laser] láser
    [router] fresadora
    [jigsaw] sierra de calar
   *[knife] cúter
} o elige otro material. Nunca cortes con láser PVC ni un plástico desconocido.
stencil-falls = Se caería una pieza de { $stencils }.
stencil-falls-mend = Elige un material que admita puentes más estrechos o dibuja la figura con un hueco en su banda.
stencil-kerf = La herramienta es más ancha que una abertura de { $stencils }: su corte mide { $least }.
stencil-kerf-mend = Corta { $stencils } con una herramienta más fina.
stencil-opening = { $stencils } { $count ->
    [one] tiene
   *[other] tienen
} una abertura de menos de { $least }.
stencil-opening-mend = El rodillo apenas la llena: usa ahí un pincel.
stencil-web = { $stencils } { $count ->
    [one] tiene
   *[other] tienen
} menos de { $least } de plantilla entre dos aberturas.
stencil-web-mend = Se rasga pronto: refuérzala por debajo con cinta o pinta las dos aberturas con dos plantillas.
stencil-thin = { $stencils } { $count ->
    [one] tiene
   *[other] tienen
} tiras de menos de { $least }, el puente mínimo de este material.
stencil-thin-mend = La lámina o el polietileno macizo las aguantan. Si no, refuérzalas con cinta.
stencil-tongue = { $stencils } { $count ->
    [one] tiene
   *[other] tienen
} una tira o lengüeta más de { $times } veces tan larga como ancha.
stencil-tongue-mend = Se dobla y se levanta: ponle un peso o pégala al suelo mientras pintas.
stencil-ties = Los puentes de { $stencils } ocupan más del { $share } % del contorno.
stencil-ties-mend = Repasarlos lleva tiempo: elige un material que admita puentes más estrechos.
stencil-turned-over = { $stencils } { $count ->
    [one] se pone
   *[other] se ponen
} también boca abajo, para figuras reflejadas.
stencil-turned-over-mend = Deja secar la plantilla y límpiala antes de darle la vuelta.
stencil-split = { $stencils } { $count ->
    [one] se corta
   *[other] se cortan
} en paneles: dos personas llevan { $longest } como mucho.
stencil-too-large = { $count ->
    [one] Una forma es demasiado grande
   *[other] { $count } formas son demasiado grandes
} para una plantilla. { $count ->
    [one] Trázala
   *[other] Trázalas
} con cuerda y pega cinta en { $outline } de contorno.

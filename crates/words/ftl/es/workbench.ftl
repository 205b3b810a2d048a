# workbench: the local page
workbench-skip = Ir a la página
workbench-language = Idioma
workbench-units = Unidades
workbench-metric = Métricas
workbench-imperial = Imperiales
workbench-use = Usar
workbench-refused = No se aceptó
workbench-back = Volver a los trabajos
workbench-back-job = Volver al trabajo
workbench-jobs = Trabajos
workbench-new = Trabajo nuevo
workbench-search = Barco o problema
workbench-find = Buscar
workbench-import = Un archivo de trabajo de otro sitio
workbench-import-do = Traer
workbench-import-none = No se dio ningún archivo.
workbench-import-long = Este archivo es demasiado largo: un trabajo es una página o dos.
workbench-import-binary = Este archivo no es texto.
workbench-unreadable = Este archivo tiene errores y no se puede juzgar.
workbench-not-judged = Aún sin juzgar.
workbench-last-reading = Última lectura { $date }.
workbench-no-reading = Aún sin lecturas.
workbench-open = Falta:
workbench-parts = Partes del trabajo
workbench-part-call = La llamada
workbench-part-boat = El barco
workbench-part-engine = Motor y transmisión
workbench-part-fitted = Lo que lleva montado
workbench-part-readings = Lecturas
workbench-part-order = Pedido y montaje
workbench-part-wants = Qué se quiere
workbench-follows = Lo que se sigue
workbench-judge = Juzgar ahora
workbench-measure-next = Medir después
workbench-undo = Deshacer
workbench-history = Estados anteriores
workbench-history-none = Aún no se ha cambiado nada.
workbench-first-state = El primer estado guardado.
workbench-restore = Recuperar este
workbench-duplicate = Copiar para un barco gemelo
workbench-export = Archivo del trabajo
workbench-save = Guardar
workbench-more = Más
workbench-add = Añadir: { $what }
workbench-remove = Quitar esto
workbench-unknown = No se sabe
workbench-yes = Sí
workbench-no = No
workbench-source = se sabe por
workbench-source-of = Cómo se sabe: { $what }
workbench-back-run = Vuelta: { $what }
workbench-other-way = la vuelta
workbench-both = Entretanto alguien escribió aquí { $theirs }. Lo suyo sigue en el campo; guarde otra vez para ponerlo en su lugar.
workbench-nothing = nada
workbench-title-refused = El título no se puede aceptar así.
workbench-gone = El programa no responde: esto aún no se ha guardado. Sigue en el campo; cámbielo otra vez cuando el programa funcione.
workbench-new-lead = Pregunte en este orden. No saberlo es buena respuesta a cualquier pregunta.
workbench-new-wrong = Algunas respuestas no se pudieron leer. Siguen abajo, cada una con lo que falla.
workbench-new-do = Empezar el trabajo
workbench-found = { $count ->
    [one] { $count } trabajo
   *[other] { $count } trabajos
}

# Keys of the job file as people call them.
workbench-key-title = Barco y problema
workbench-key-duty = Para qué ha de servir la hélice
workbench-key-complaint = La queja
workbench-key-since = Desde cuándo
workbench-key-changed = Qué cambió justo antes
workbench-key-onset = Cómo empezó
workbench-key-symptoms = Visto, oído o sentido
workbench-key-wants = Qué se quiere
workbench-key-notes = Notas
workbench-key-kind = Clase
workbench-key-length-waterline = Eslora en flotación
workbench-key-length-overall = Eslora total
workbench-key-beam = Manga
workbench-key-displacement = Peso en la prueba
workbench-key-loaded-displacement = Peso cargado
workbench-key-screws = Hélices
workbench-key-arrangement = Dónde trabaja la hélice
workbench-key-since-scrub = Desde la última limpieza del fondo
workbench-key-growth = Incrustación en el fondo
workbench-key-water = Agua
workbench-key-depth = Profundidad
workbench-key-model = Marca y modelo
workbench-key-rated-power = Potencia nominal
workbench-key-rated-speed = Régimen nominal
workbench-key-no-load-speed = Régimen en vacío
workbench-key-reduction = Reducción avante
workbench-key-reduction-astern = Reducción atrás
workbench-key-stamp = Marca en el núcleo
workbench-key-diameter = Diámetro
workbench-key-pitch = Paso
workbench-key-blades = Palas
workbench-key-hand = Sentido de giro
workbench-key-cup = Rizo del borde
workbench-key-largest-diameter = Mayor diámetro que cabe
workbench-key-stern = Alrededor de la hélice
workbench-key-shaft = Eje
workbench-key-survey = Ficha de medición
workbench-key-reading = Lectura
workbench-key-label = Nombre de la lectura
workbench-key-date = Fecha
workbench-key-full-throttle = A todo gas
workbench-key-engine-speed = Régimen del motor
workbench-key-by = Cómo se leyó
workbench-key-speed = Velocidad, ida y vuelta
workbench-key-speed-by = Cómo se leyó la velocidad
workbench-key-order = Pedido
workbench-key-fitting = Registro del montaje
workbench-key-receipt = Control de recepción
workbench-key-under-sail = A vela
workbench-papers = Documentos
workbench-papers-hint = Cada uno se abre como página propia, completa y lista para imprimir; lo que no se sabe queda como línea para rellenar a mano.
workbench-papers-not-yet = Este documento aún no se puede redactar:

# Registro de una prueba.
workbench-log = Lecturas de un registro
workbench-log-one = Traer un registro
workbench-log-another = Otro registro
workbench-log-bring = Un registro de la prueba (derrota, instrumentos, motor)
workbench-log-hint = GPX, NMEA 0183, una tabla CSV con cabecera o Signal K; dos archivos de la misma hora se leen como uno. Como mucho 16 MB.
workbench-log-look = Mirarlo
workbench-log-many = Como mucho cuatro archivos se leen como una prueba.
workbench-log-none-ticked = No se marcó ninguna lectura. Vuelva atrás, marque las que se toman y tómelas de nuevo.
workbench-log-kept = Registros traídos antes
workbench-log-kept-hint = Se guardan los { $count } últimos junto al trabajo.
workbench-log-steady = Mantenido al menos, s
workbench-log-again = Mirar de nuevo
workbench-log-offers = { $count ->
    [one] Una lectura para tomar
   *[other] { $count } lecturas para tomar
}
workbench-log-take = Tomar estas
workbench-log-take-one = Tomar la lectura { $number }
workbench-log-there = El trabajo ya la tiene
workbench-log-speed = Velocidad en el agua
workbench-log-current = Corriente
workbench-log-runs = { $count ->
    [one] Una corrida
   *[other] { $count } corridas
}
workbench-log-worth = Valor
workbench-log-good = bueno
workbench-log-fair = mediano
workbench-log-weak = débil
workbench-log-full = Esto fue a toda máquina
workbench-log-highest = El régimen más alto del registro. Solo quien estaba al mando sabe si la palanca iba a tope.
workbench-log-not-highest = El registro tiene un régimen más alto que este.
workbench-log-read = { $format }: { $lines } líneas, { $used } usadas, { $refused } no se pudieron leer.
workbench-log-refused = Lo que no se pudo leer
workbench-log-sentence = { $count ->
    [0] Nada se mantuvo estable lo bastante para ser una lectura.
    [one] Se ofrece una lectura: los tramos sombreados, donde se mantuvieron gas y rumbo.
   *[other] Se ofrecen { $count } lecturas: los tramos sombreados, donde se mantuvieron gas y rumbo.
}
workbench-log-picture = El registro en el tiempo
workbench-log-picture-says = Velocidad del barco y régimen del motor según el registro. Los tramos estables van sombreados y llevan el número de la lectura que ofrecen; sus medias se trazan encima.
workbench-log-axis-speed = velocidad, kn
workbench-log-axis-rpm = régimen, rpm
workbench-log-axis-clock = hora, UTC
workbench-log-axis-elapsed = tiempo desde el inicio

workbench-drawn = La hélice tal como aquí está escrita
workbench-drawn-none = Con diámetro y paso basta para un primer dibujo.
workbench-fold = Todo lo que se sigue

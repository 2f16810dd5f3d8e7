;;; Bellcrank in Emacs 29 or later with its own client, eglot (28 with the package): put this into your init file.  -*- lexical-binding: t -*-
;; `bellcrank' has to be on the path.
(define-derived-mode bellcrank-mode prog-mode "Bellcrank"
  "Set-ups of race-car suspensions."
  (setq-local comment-start "# "
              indent-tabs-mode nil
              tab-width 2))
(modify-syntax-entry ?# "<" bellcrank-mode-syntax-table)
(modify-syntax-entry ?\n ">" bellcrank-mode-syntax-table)
(add-to-list 'auto-mode-alist '("\\.crank\\'" . bellcrank-mode))
(with-eval-after-load 'eglot
  (add-to-list 'eglot-server-programs '(bellcrank-mode . ("bellcrank" "serve" "--stdio"))))
(add-hook 'bellcrank-mode-hook #'eglot-ensure)

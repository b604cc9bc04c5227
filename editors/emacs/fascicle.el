;;; fascicle.el --- Course texts of anatomy: cards, completion, findings  -*- lexical-binding: t; -*-

;; Package-Requires: ((emacs "26.3"))
;; SPDX-License-Identifier: MIT OR Apache-2.0

;;; Commentary:

;; Tells the language client of Emacs where the server is.  Eglot (part of Emacs from 29 on) and lsp-mode are served;
;; whichever is loaded takes it.  If `markdown-mode' is not installed, a plain mode for Markdown files is set up, since a
;; language client needs a major mode to go by.

;;; Code:

(defgroup fascicle nil
  "Course texts of anatomy."
  :group 'text)

(defcustom fascicle-command '("fascicle" "serve")
  "The server and its arguments."
  :type '(repeat string)
  :group 'fascicle)

(define-derived-mode fascicle-text-mode text-mode "Course"
  "Plain mode for course texts where no mode for Markdown is installed.")

(define-derived-mode fascicle-captions-mode text-mode "Captions"
  "Plain mode for captions of a lecture.")

(add-to-list 'auto-mode-alist '("\\.\\(?:srt\\|vtt\\)\\'" . fascicle-captions-mode))
(unless (or (fboundp 'markdown-mode) (locate-library "markdown-mode"))
  (add-to-list 'auto-mode-alist '("\\.\\(?:md\\|markdown\\|mdx\\|qmd\\|rmd\\)\\'" . fascicle-text-mode)))

(defconst fascicle-modes '(markdown-mode gfm-mode fascicle-text-mode fascicle-captions-mode)
  "Major modes of course texts.")

(defvar eglot-server-programs)
(with-eval-after-load 'eglot
  (dolist (mode fascicle-modes)
    (add-to-list 'eglot-server-programs (cons mode fascicle-command))))

(declare-function lsp-register-client "ext:lsp-mode")
(declare-function make-lsp-client "ext:lsp-mode")
(declare-function lsp-stdio-connection "ext:lsp-mode")
(defvar lsp-language-id-configuration)
(with-eval-after-load 'lsp-mode
  (add-to-list 'lsp-language-id-configuration '(fascicle-text-mode . "markdown"))
  (add-to-list 'lsp-language-id-configuration '(fascicle-captions-mode . "captions"))
  (lsp-register-client
   (make-lsp-client :new-connection (lsp-stdio-connection (lambda () fascicle-command))
                    :major-modes fascicle-modes
                    :add-on? t
                    :server-id 'fascicle)))

(provide 'fascicle)
;;; fascicle.el ends here
